import { blockHours } from '../../figures/clock-blocks.ts';
import type { Norm, NormCell } from '../../norms/norm.ts';
import { localTimestamp } from '../../units/display.ts';
import { airView } from '../air-view.ts';
import { differenceCell, type MonthScope, pressureCell, temperatureCell } from '../scope.ts';
import { defineTable } from '../table.ts';
import { circuitColumn, suctionGroupColumn } from './key-columns.ts';

interface NormRow {
  readonly norm: Norm;
  readonly range: NormCell;
}

/** A value of a figure in the site's unit for it. */
function valueCell(value: number, { unit }: Norm, scope: MonthScope): number {
  if (unit === 'Cel') return temperatureCell(value, scope);
  if (unit === 'K') return differenceCell(value, scope);
  return unit === 'kPa' ? pressureCell(value, scope) : value;
}

export const normsTable = defineTable<NormRow>({
  name: 'norms',
  title: 'What is normal here',
  oneRow: 'one figure at some hours of one kind of day, learnt from the quiet days of the whole export',
  rows: (scope) => airView(scope).norms.flatMap((norm) => norm.cells.map((range) => ({ norm, range }))),
  columns: [
    circuitColumn((row) => row.norm.circuit, 'Id of the circuit; empty for a suction group.'),
    suctionGroupColumn((row) => row.norm.suctionGroup),
    {
      name: 'figure',
      unit: '',
      definition: 'Which figure, as listed at the end of this page.',
      formula: 'figures',
      cell: (row) => row.norm.id,
    },
    {
      name: 'point',
      unit: '',
      definition: 'The one point it belongs to; empty for a circuit as a whole.',
      formula: 'site file',
      cell: (row) => row.norm.point,
    },
    {
      name: 'days',
      unit: '',
      definition: 'weekday, weekend or any.',
      formula: 'Saturday and Sunday are the weekend',
      cell: (row) => row.range.dayType,
    },
    {
      name: 'fromHour',
      unit: 'h',
      definition: "From this hour on the site's clock.",
      formula: 'blocks of four hours; 0 for the whole day',
      cell: (row) => (row.range.block === null ? 0 : row.range.block * blockHours),
    },
    {
      name: 'toHour',
      unit: 'h',
      definition: 'Until this hour.',
      formula: 'blocks of four hours; 24 for the whole day',
      cell: (row) => (row.range.block === null ? 24 : (row.range.block + 1) * blockHours),
    },
    {
      name: 'quietDays',
      unit: 'count',
      definition: 'Quiet days that the range rests on.',
      formula: 'docs/methods/norms.md',
      cell: (row) => row.range.days,
    },
    ...(['p10', 'median', 'p90'] as const).map((name) => ({
      name,
      unit: "site's unit of the figure",
      definition:
        name === 'median'
          ? 'The middle.'
          : `The ${name === 'p10' ? 'lower' : 'upper'} end of the usual range.`,
      formula: `quantile ${name === 'p10' ? '0.1' : name === 'p90' ? '0.9' : '0.5'} (type 7) of the readings (air, suction, discharge, level) or block figures`,
      decimals: 3,
      cell: (row: NormRow, scope: MonthScope) => valueCell(row.range[name], row.norm, scope),
    })),
    {
      name: 'frozenSince',
      unit: 'local time',
      definition: 'Since when nothing was learnt because a finding stands; empty where none does.',
      formula: 'earliest onset of the standing findings, watch or act',
      cell: (row, { log }) =>
        row.norm.frozenSince === null ? null : localTimestamp(row.norm.frozenSince, log),
    },
  ],
});
