import type { Cell } from '../../audit/table.ts';
import { formatNumber } from '../../units/format-number.ts';

/** A cell for people: a number with fixed decimals, `–` for what is not known. */
export function cellText(cell: Cell | undefined, decimals = 0): string {
  if (cell === null || cell === undefined || cell === '') return '–';
  if (typeof cell === 'number') return formatNumber(cell, decimals);
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  return cell;
}

/** `62 %` of a share in a cell. */
export function shareText(cell: Cell | undefined): string {
  return typeof cell === 'number' ? `${formatNumber(cell * 100, 0)} %` : '–';
}
