import type { Grid } from '../../model/grid.ts';
import { samplesIn } from '../../model/grid.ts';
import { runThreshold } from '../../signals/run-threshold.ts';
import type { GroupSignals } from '../../signals/types.ts';

export interface Running {
  /** Share of the time with every compressor that still runs running. */
  readonly allRunningShare: number;
  /** Mean share of the compressors running. */
  readonly runningShare: number;
  /** Compressors that used to run and did not at all in these hours. */
  readonly dead: number;
}

/** What the compressors did in `hours`, against the hours before `from`; gaps left out. Null where none is logged. */
export function runningIn(
  group: GroupSignals,
  hours: readonly number[],
  from: number,
  grid: Grid,
): Running | null {
  const machines = group.group.compressors.map((record) => ({
    values: record.values,
    threshold: runThreshold(record),
  }));
  if (machines.length === 0 || hours.length === 0) return null;
  const hour = samplesIn(grid, 60);
  const used = machines.map(({ values, threshold }) => shareOn(values, threshold, 0, from * hour) > 0.02);
  const ran = machines.map(({ values, threshold }) =>
    hours.some((k) => shareOn(values, threshold, k * hour, (k + 1) * hour) > 0),
  );
  const alive = machines.filter((_, m) => ran[m]);
  let all = 0;
  let on = 0;
  let known = 0;
  for (const k of hours) {
    for (let i = k * hour; i < Math.min(grid.count, (k + 1) * hour); i++) {
      if (alive.some(({ values }) => Number.isNaN(values[i]!))) continue;
      const running = alive.filter(({ values, threshold }) => values[i]! > threshold).length;
      on += running;
      if (running === alive.length) all++;
      known++;
    }
  }
  return {
    allRunningShare: alive.length === 0 ? 0 : all / known,
    runningShare: on / (known * machines.length),
    dead: machines.filter((_, m) => used[m] && !ran[m]).length,
  };
}

function shareOn(values: Float64Array, threshold: number, from: number, to: number): number {
  let on = 0;
  for (let i = from; i < Math.min(values.length, to); i++) if (values[i]! > threshold) on++;
  return on / Math.max(1, to - from);
}
