import { indexAt, timeAt } from '../../src/model/grid.ts';
import type { Circuit, Log } from '../../src/model/log.ts';
import type { Record } from '../../src/model/record.ts';
import { columnMeans } from '../../src/reporting/column-means.ts';
import { columnRange, type SampleRange } from '../../src/reporting/reduce-series.ts';
import { settledBand } from '../../src/reporting/settled-band.ts';
import { siteScale } from '../../src/reporting/site-scale.ts';
import type { PlotRange } from './time-range.ts';

/** Narrower columns than this hold too few cooling samples for a median. */
const shortestColumnMs = 30 * 60_000;
/** More columns than this show the cycles again that the median is there to calm. */
const mostColumns = 240;

function columnsFor({ fromMs, toMs, pixels }: PlotRange, range: SampleRange): number {
  const wide = Math.floor((toMs - fromMs) / shortestColumnMs);
  return Math.max(1, Math.min(mostColumns, Math.floor(pixels / 2), wide, range.to - range.from));
}

/**
 * The calm picture of a long span, a column at a time: lowest, median and highest of each probe's settled air
 * (defrosts and recoveries left out), the same with the mean of the suction pressure, and the share of the time that
 * the valve was open.
 */
export function settledLines(log: Log, circuit: Circuit, phase: Uint8Array, plot: PlotRange) {
  const { grid } = log;
  const range = { from: indexAt(grid, plot.fromMs), to: indexAt(grid, plot.toMs) + 1 };
  const columns = columnsFor(plot, range);
  const times: number[] = [];
  for (let column = 0; column < columns; column++) {
    const { from, to } = columnRange(range, columns, column);
    times.push(timeAt(grid, (from + to - 1) / 2));
  }
  const { temperature, pressure } = siteScale(log);
  const suction = log.suctionGroups[0]?.pressure ?? null;
  const meansOf = (record: Record, convert: (value: number) => number) => {
    const { low, mean, high } = columnMeans(record.values, grid, range, columns, convert);
    return { low, mean, high };
  };
  return {
    times,
    probes: circuit.probes.map(({ point, record }) => ({
      point,
      ...settledBand(record.values, phase, range, columns, temperature),
    })),
    valve: circuit.valve === null ? null : meansOf(circuit.valve, (share) => share).mean,
    suction: suction === null ? null : meansOf(suction, pressure),
  };
}
