import { type MonthAudit, tableNamed } from '../../audit/month-audit.ts';
import { median } from '../../maths/median.ts';
import { formatNumber } from '../../units/format-number.ts';
import { type Html, html } from '../html/escape.ts';
import { htmlTable, numberColumn, wordColumn } from '../html/table.ts';
import { siteScale } from '../site-scale.ts';
import { cellText } from './cell-text.ts';
import { groupRows, numbersOf, type RowView, viewOf } from './table-view.ts';

/** `55.6 (54.9 to 56.1)`: the middle of the daily values, and their range. */
function daysText(rows: readonly RowView[], name: string, decimals: number): string {
  const values = numbersOf(rows, name);
  if (values.length === 0) return '–';
  const show = (value: number) => formatNumber(value, decimals);
  return `${show(median(values))} (${show(Math.min(...values))} to ${show(Math.max(...values))})`;
}

/** Suction and condensing against target, and what the compressors did. */
export function racksSection(audit: MonthAudit): Html | null {
  const { temperatureSign, pressureSign, pressureDifferenceSign } = siteScale(audit.scope.log);
  const groups = groupRows(viewOf(tableNamed(audit, 'suction')).rows, ['suctionGroup']);
  const machines = groupRows(viewOf(tableNamed(audit, 'compressors')).rows, ['suctionGroup', 'point']);
  if (groups.length === 0) return null;
  const suction = htmlTable(
    'Suction and condensing',
    [
      wordColumn('Suction group'),
      numberColumn(`Suction, ${pressureSign}`),
      numberColumn(`Target, ${pressureSign}`),
      numberColumn(`Over target, ${pressureDifferenceSign}`),
      numberColumn(`Evaporating, ${temperatureSign}`),
      numberColumn(`Condensing, ${temperatureSign}`),
      numberColumn('Liquid level, %'),
    ],
    groups.map((rows) => [
      cellText(rows[0]!('suctionGroup')),
      daysText(rows, 'suction', 1),
      daysText(rows, 'target', 1),
      daysText(rows, 'error', 1),
      daysText(rows, 'saturatedSuction', 1),
      daysText(rows, 'condensing', 1),
      levelText(rows),
    ]),
  );
  return html`<h2>Suction, condensing, compressors</h2>
${suction}
<p class="quiet">Middle of the daily medians, and the lowest and highest day.</p>
${machines.length === 0 ? html`<p>No compressor is logged: starts and running hours cannot be told.</p>` : compressorTable(machines)}`;
}

function levelText(rows: readonly RowView[]): string {
  const values = numbersOf(rows, 'liquidLevel').map((share) => share * 100);
  if (values.length === 0) return '–';
  return `${formatNumber(median(values), 0)} (${formatNumber(Math.min(...values), 0)} to ${formatNumber(Math.max(...values), 0)})`;
}

function compressorTable(machines: readonly (readonly RowView[])[]): Html {
  const columns = [
    wordColumn('Compressor'),
    wordColumn('Suction group'),
    numberColumn('Starts a day'),
    numberColumn('Running, h a day'),
    numberColumn('Shortest run, min'),
    numberColumn('Shortest stop, min'),
  ];
  const least = (rows: readonly RowView[], name: string): string => {
    const values = numbersOf(rows, name);
    return values.length === 0 ? '–' : formatNumber(Math.min(...values), 0);
  };
  const notes = [...new Set(machines.flat().map((row) => cellText(row('note'))))].filter(
    (note) => note !== '–',
  );
  return html`${htmlTable(
    'Compressors',
    columns,
    machines.map((rows) => [
      cellText(rows[0]!('point')),
      cellText(rows[0]!('suctionGroup')),
      daysText(rows, 'starts', 0),
      daysText(rows, 'runHours', 1),
      least(rows, 'shortestRunMinutes'),
      least(rows, 'shortestOffMinutes'),
    ]),
  )}${notes.map((note) => html`<p class="quiet">Starts that are left out: ${note}.</p>`)}`;
}
