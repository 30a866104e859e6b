import { indexAt, timeAt } from '../../src/model/grid.ts';
import type { Circuit, Log } from '../../src/model/log.ts';
import { columnRange } from '../../src/reporting/reduce-series.ts';
import { settledBand } from '../../src/reporting/settled-band.ts';
import { siteScale } from '../../src/reporting/site-scale.ts';
import type { PlotRange } from './time-range.ts';

/** Narrower columns than this hold too few cooling samples for a median. */
const shortestColumnMs = 30 * 60_000;

/**
 * Settled air of every probe, defrosts and recoveries left out: lowest, median and highest of each column. Columns
 * are at least half an hour wide.
 */
export function settledLines(
  log: Log,
  circuit: Circuit,
  phase: Uint8Array,
  { fromMs, toMs, pixels }: PlotRange,
) {
  const { grid } = log;
  const range = { from: indexAt(grid, fromMs), to: indexAt(grid, toMs) + 1 };
  const widest = Math.floor((toMs - fromMs) / shortestColumnMs);
  const columns = Math.max(1, Math.min(Math.floor(pixels / 2), widest, range.to - range.from));
  const times: number[] = [];
  for (let column = 0; column < columns; column++) {
    const { from, to } = columnRange(range, columns, column);
    times.push(timeAt(grid, (from + to - 1) / 2));
  }
  const { temperature } = siteScale(log);
  return {
    times,
    probes: circuit.probes.map(({ point, record }) => ({
      point,
      ...settledBand(record.values, phase, range, columns, temperature),
    })),
  };
}
