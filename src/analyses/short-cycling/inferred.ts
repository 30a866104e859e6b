import type { Grid } from '../../model/grid.ts';
import { samplesIn } from '../../model/grid.ts';
import type { Run } from './run-history.ts';

/**
 * Runs and stops read from a pressure (or a temperature) alone: it falls while machines run and rises while they
 * stand, so each time it crosses the mean of the hour around it, by a quarter of its swing there, one of them
 * changed state. Marked as inferred wherever it is used.
 */
export function inferredRuns(values: Float64Array, resolution: number, grid: Grid): Run[] {
  const reach = samplesIn(grid, 30);
  const runs: Run[] = [];
  let sum = 0;
  let squares = 0;
  let known = 0;
  let high: boolean | null = null;
  let start = 0;
  for (let i = -reach; i < values.length; i++) {
    const entering = i + reach < values.length ? values[i + reach]! : Number.NaN;
    const leaving = i - reach - 1 >= 0 ? values[i - reach - 1]! : Number.NaN;
    if (!Number.isNaN(entering)) {
      sum += entering;
      squares += entering * entering;
      known++;
    }
    if (!Number.isNaN(leaving)) {
      sum -= leaving;
      squares -= leaving * leaving;
      known--;
    }
    if (i < 0 || Number.isNaN(values[i]!)) continue;
    const mean = sum / known;
    const spread = Math.sqrt(Math.max(0, squares / known - mean * mean));
    const band = Math.max(0.5 * spread, resolution);
    const now: boolean | null = values[i]! > mean + band ? true : values[i]! < mean - band ? false : high;
    if (now === high || now === null) continue;
    if (high !== null) runs.push(runOf(start, i, !high, grid));
    start = i;
    high = now;
  }
  return runs;
}

const runOf = (from: number, to: number, on: boolean, grid: Grid): Run => ({
  start: grid.startMs + from * grid.stepMs,
  end: grid.startMs + to * grid.stepMs,
  on,
  whole: true,
});
