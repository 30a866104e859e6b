import { quantile } from '../../maths/quantile.ts';
import { bubbleTemperature } from '../../refrigerants/saturation.ts';
import type { GroupSignals } from '../../signals/types.ts';
import { monthDays, pressureCell, temperatureCell } from '../scope.ts';
import { defineTable } from '../table.ts';
import { dayColumn, suctionGroupColumn } from './key-columns.ts';

interface GroupDay {
  readonly day: string;
  readonly of: GroupSignals;
  readonly suction: number;
  readonly target: number;
  readonly saturated: number;
  readonly discharge: number;
  readonly condensing: number;
  readonly liquidLevel: number;
}

export const suctionTable = defineTable<GroupDay>({
  name: 'suction',
  title: 'Suction and condensing of each suction group, day by day',
  oneRow: 'one suction group on one local day',
  rows: (scope) =>
    monthDays(scope).flatMap(({ d, day }) =>
      scope.signals.groups.map((of): GroupDay => {
        const { group } = of;
        const middle = (values: Float64Array | undefined) =>
          values === undefined ? Number.NaN : quantile(values.subarray(day.from, day.to), 0.5);
        const discharge = middle(group.discharge?.values);
        const condensing =
          group.refrigerant === null ? Number.NaN : bubbleTemperature(group.refrigerant, discharge);
        return {
          day: day.date,
          of,
          suction: of.suction[d]!,
          target: of.suctionTarget[d]!,
          saturated: of.saturatedSuction[d]!,
          discharge,
          condensing,
          liquidLevel: middle(group.liquidLevel?.values),
        };
      }),
    ),
  columns: [
    dayColumn((row) => row.day),
    suctionGroupColumn((row) => row.of.group.id),
    {
      name: 'suction',
      unit: 'site pressure',
      definition: 'Middle of the suction pressure. Empty where less than half the day is logged.',
      formula: 'interpolated median of the readings of the day',
      decimals: 3,
      cell: (row, scope) => pressureCell(row.suction, scope),
    },
    {
      name: 'target',
      unit: 'site pressure',
      definition: 'Its set point.',
      formula: 'median of the logged set point, or the number of the site file',
      decimals: 3,
      cell: (row, scope) => pressureCell(row.target, scope),
    },
    {
      name: 'error',
      unit: 'site pressure difference',
      definition: 'Above target where positive.',
      formula: 'suction − target',
      decimals: 3,
      cell: (row, scope) => pressureCell(row.suction, scope) - pressureCell(row.target, scope),
    },
    {
      name: 'saturatedSuction',
      unit: 'site temperature',
      definition:
        'Evaporating temperature, dew point of the stated refrigerant. Empty where that is not known.',
      formula: 'dewTemperature(refrigerant, suction)',
      decimals: 2,
      cell: (row, scope) => temperatureCell(row.saturated, scope),
    },
    {
      name: 'discharge',
      unit: 'site pressure',
      definition: 'Middle of the discharge pressure.',
      formula: 'quantile 0.5 (type 7) of the readings of the day',
      decimals: 3,
      cell: (row, scope) => pressureCell(row.discharge, scope),
    },
    {
      name: 'condensing',
      unit: 'site temperature',
      definition: 'Condensing temperature, bubble point of the stated refrigerant.',
      formula: 'bubbleTemperature(refrigerant, discharge)',
      decimals: 2,
      cell: (row, scope) => temperatureCell(row.condensing, scope),
    },
    {
      name: 'liquidLevel',
      unit: '1',
      definition: 'Middle of the liquid level.',
      formula: 'quantile 0.5 (type 7) of the readings of the day',
      decimals: 4,
      cell: (row) => row.liquidLevel,
    },
  ],
});
