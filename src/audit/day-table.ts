import type { DataFrame as Frame } from 'danfojs-node/dist/danfojs-base/index.js';
import type { MonthScope } from './scope.ts';
import type { Table } from './table.ts';
import { dayColumn } from './tables/key-columns.ts';

export type Danfo = typeof import('danfojs-node/dist/danfojs-base/index.js');

/** The columns of the table of days; its cells are sums and means over the rows of other tables. */
export const dayColumns: Table['columns'] = [
  dayColumn(() => null),
  {
    name: 'hours',
    unit: 'h',
    definition: 'Length of the day on the clock of the site: 23 or 25 when the clocks change.',
    formula: 'calendar of the site',
  },
  {
    name: 'coverage',
    unit: '1',
    definition: 'Mean share of the day for which the air probes have a reading.',
    formula: 'mean of coverage over the rows of probes.csv with that day',
  },
  {
    name: 'aboveLimitMinutes',
    unit: 'min',
    definition: 'Probe minutes of settled air above the limit, all probes together. Air, not food.',
    formula: 'Σ aboveLimitMinutes over the rows of probes.csv with that day',
  },
  {
    name: 'probesAbove',
    unit: 'count',
    definition: 'Probes whose settled air was above the limit at some time.',
    formula: 'rows of probes.csv with that day and aboveLimitMinutes > 0',
  },
  {
    name: 'compressorStarts',
    unit: 'count',
    definition: 'Starts of all compressors whose starts can be counted.',
    formula: 'Σ starts over the rows of compressors.csv with that day',
  },
  {
    name: 'compressorHours',
    unit: 'h',
    definition: 'Running hours of all compressors.',
    formula: 'Σ runHours over the rows of compressors.csv with that day',
  },
];

/** The site day by day, grouped by danfojs from the tables of probes and compressors. */
export function dayTable(
  { log, month }: MonthScope,
  tables: ReadonlyMap<string, Table>,
  danfo: Danfo,
): Table {
  const probes = tables.get('probes')!;
  const compressors = tables.get('compressors')!;
  const coverage = byDay(frameOf(probes, ['coverage'], danfo), 'coverage', 'mean');
  const above = byDay(frameOf(probes, ['aboveLimitMinutes'], danfo), 'aboveLimitMinutes', 'sum');
  const warm = byDay(
    frameOf(probes, ['aboveLimitMinutes'], danfo, (minutes) => minutes > 0),
    'aboveLimitMinutes',
    'count',
  );
  const starts = byDay(frameOf(compressors, ['starts'], danfo), 'starts', 'sum');
  const running = byDay(frameOf(compressors, ['runHours'], danfo), 'runHours', 'sum');
  const rounded = (value: number | undefined, decimals: number) =>
    value === undefined ? null : Number(value.toFixed(decimals));
  const rows = month.days.map((d) => {
    const { date, hours } = log.calendar.days[d]!;
    return [
      date,
      hours,
      rounded(coverage.get(date), 4),
      rounded(above.get(date), 2),
      above.has(date) ? (warm.get(date) ?? 0) : null,
      rounded(starts.get(date), 0),
      rounded(running.get(date), 3),
    ];
  });
  return { name: 'days', title: 'The site day by day', columns: dayColumns, rows, eachRow: () => rows };
}

/** Day and one column of a table, rows without the value left out: danfojs would count them as 0. */
function frameOf(
  table: Table,
  [column]: readonly [string],
  danfo: Danfo,
  keeps: (value: number) => boolean = () => true,
): Frame | null {
  const day = table.columns.findIndex(({ name }) => name === 'day');
  const at = table.columns.findIndex(({ name }) => name === column);
  const rows = table.rows
    .filter((row) => typeof row[at] === 'number' && keeps(row[at]))
    .map((row) => [row[day] as string, row[at] as number]);
  return rows.length === 0 ? null : new danfo.DataFrame(rows, { columns: ['day', column] });
}

function byDay(frame: Frame | null, column: string, how: 'sum' | 'mean' | 'count'): Map<string, number> {
  if (frame === null) return new Map();
  const grouped = frame.groupby(['day']).agg({ [column]: how }) as Frame;
  return new Map((grouped.values as [string, number][]).map(([day, value]) => [day, value]));
}
