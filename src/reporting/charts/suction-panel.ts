import { timeAt } from '../../model/grid.ts';
import type { Log, SuctionGroup } from '../../model/log.ts';
import type { Target } from '../../model/record.ts';
import { columnMeans } from '../column-means.ts';
import { type ReducedSeries, reduceSeries, type SampleRange } from '../reduce-series.ts';
import { siteScale } from '../site-scale.ts';
import type { LinesPanel } from './chart.ts';
import { domainOf } from './scale.ts';

/** Suction pressure, mean and range a column, with its target; nothing where it is not logged. */
export function suctionPanel(
  log: Log,
  group: SuctionGroup,
  range: SampleRange,
  columns: number,
  height: number,
): readonly LinesPanel[] {
  if (group.pressure === null) return [];
  const { pressure, pressureSign } = siteScale(log);
  const { times, low, mean, high } = columnMeans(group.pressure.values, log.grid, range, columns, pressure);
  const target = targetLine(group.pressureSetPoint, log, range, columns);
  const domain = domainOf([low, high, target?.values ?? []], 2);
  if (domain === null) return [];
  return [
    {
      kind: 'lines',
      title: `Suction pressure of ${group.id}`,
      unit: pressureSign,
      height,
      domain,
      lines: [
        {
          label: 'suction',
          slot: 'plain',
          strong: false,
          line: { times, values: mean },
          band: { times, low, high },
        },
      ],
      levels: target === null ? [] : [{ kind: 'set-point', label: 'target', line: target }],
    },
  ];
}

function targetLine(
  target: Target | null,
  log: Log,
  range: SampleRange,
  columns: number,
): ReducedSeries | null {
  if (target === null) return null;
  const { pressure } = siteScale(log);
  if (typeof target !== 'number') return reduceSeries(target.values, log.grid, range, columns, pressure);
  return {
    times: [timeAt(log.grid, range.from), timeAt(log.grid, range.to - 1)],
    values: [pressure(target), pressure(target)],
  };
}
