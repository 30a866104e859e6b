import type { Cell } from '../../audit/table.ts';
import { formatMinutes } from '../../units/display.ts';
import { formatNumber } from '../../units/format-number.ts';

/** A cell for people: a number with fixed decimals, `–` for what is not known. */
export function cellText(cell: Cell, decimals = 0): string {
  if (cell === null || cell === '') return '–';
  if (typeof cell === 'number') return formatNumber(cell, decimals);
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  return cell;
}

/** `62 %` of a share in a cell. */
export function shareText(cell: Cell): string {
  return typeof cell === 'number' ? `${formatNumber(cell * 100, 0)} %` : '–';
}

/** `19 min`, `2 h 40 min`, `0`. */
export function minutesText(cell: Cell): string {
  if (typeof cell !== 'number') return '–';
  return cell === 0 ? '0' : formatMinutes(cell).replace(/minutes?/, 'min');
}

/** `2026-09-12 14:30` of an RFC 3339 time in a cell. */
export function timeText(cell: Cell): string {
  return typeof cell === 'string' ? cell.slice(0, 16).replace('T', ' ') : '–';
}
