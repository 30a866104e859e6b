import { timeAt } from '../../model/grid.ts';
import type { Log, SuctionGroup } from '../../model/log.ts';
import type { Record, Target } from '../../model/record.ts';
import { columnMeans } from '../column-means.ts';
import { type ReducedSeries, reduceSeries, type SampleRange } from '../reduce-series.ts';
import { siteScale } from '../site-scale.ts';
import type { ChartLine, LinesPanel } from './chart.ts';
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
  const { pressureSign } = siteScale(log);
  const target = targetLine(group.pressureSetPoint, log, range, columns);
  const line = suctionLine(group.pressure, log, range, columns);
  const shown = line.band === null ? [line.line.values] : [line.band.low, line.band.high];
  const domain = domainOf([...shown, target?.values ?? []], 2);
  if (domain === null) return [];
  return [
    {
      kind: 'lines',
      title: `Suction pressure of ${group.id}`,
      unit: pressureSign,
      height,
      domain,
      lines: [line],
      levels: target === null ? [] : [{ kind: 'set-point', label: 'target', line: target }],
    },
  ];
}

/** Below this many samples a column their range says no more than the line through them. */
const fewestForRange = 4;

function suctionLine(record: Record, log: Log, range: SampleRange, columns: number): ChartLine {
  const { pressure } = siteScale(log);
  const plain = { label: 'suction', slot: 'plain', strong: false } as const;
  if (range.to - range.from < fewestForRange * columns) {
    const line = reduceSeries(record.values, log.grid, range, columns, pressure);
    return { ...plain, line, band: null };
  }
  const { times, low, mean, high } = columnMeans(record.values, log.grid, range, columns, pressure);
  return { ...plain, line: { times, values: mean }, band: { times, low, high } };
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
