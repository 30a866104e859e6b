import type { Grid } from '../../model/grid.ts';
import { timeAt } from '../../model/grid.ts';
import type { Record } from '../../model/record.ts';
import { runThreshold } from '../../signals/run-threshold.ts';
import { isStart, spellAt } from '../../signals/spells.ts';
import type { Spells } from '../../signals/types.ts';
import type { EpochMs, Minutes } from '../../units/quantities.ts';

/** One stretch of running or standing, in time rather than in samples. */
export interface Run {
  readonly start: EpochMs;
  readonly end: EpochMs;
  readonly on: boolean;
  /** False when its beginning or its end was not seen. */
  readonly whole: boolean;
}

/** When a machine was seen to start; its runs and stops are put in time only for one that starts too often. */
export interface RunHistory {
  /** Times at which it was seen to go from standing to running. */
  readonly starts: readonly EpochMs[];
  readonly runs: () => readonly Run[];
  /** Whether the spells of its record leave no sample out. */
  readonly isGapless: boolean;
}

/**
 * The runs and stops of a machine: from every change that the export logged, where it logged changes, so that runs
 * shorter than the grid are seen; else from the spells on the grid.
 */
export function runHistory(record: Record, spells: Spells, grid: Grid): RunHistory {
  const isGapless = samplesOf(spells) === grid.count;
  if (record.changes !== null) return historyOf(runsOfChanges(record), isGapless);
  const starts: EpochMs[] = [];
  for (let k = 0; k < spells.count; k++) if (isStart(spells, k)) starts.push(timeAt(grid, spells.from[k]!));
  const runs = (): Run[] =>
    Array.from({ length: spells.count }, (_, k) => {
      const { from, to, on, whole } = spellAt(spells, k);
      return { start: timeAt(grid, from), end: timeAt(grid, to), on, whole };
    });
  return { starts, runs, isGapless };
}

function samplesOf({ count, from, to }: Spells): number {
  let samples = 0;
  for (let k = 0; k < count; k++) samples += to[k]! - from[k]!;
  return samples;
}

export function historyOf(runs: readonly Run[], isGapless = false): RunHistory {
  const starts = runs.filter((run, i) => run.on && runs[i - 1]?.end === run.start).map((run) => run.start);
  return { starts, runs: () => runs, isGapless };
}

function runsOfChanges(record: Record): Run[] {
  const { times, values } = record.changes!;
  const threshold = runThreshold(record);
  const runs: Run[] = [];
  let start = 0;
  for (let i = 1; i <= times.length; i++) {
    const state = values[start]!;
    if (i < times.length && values[i]! > threshold === state > threshold && !Number.isNaN(values[i]!))
      continue;
    if (!Number.isNaN(state)) {
      const seenStart = start > 0 && !Number.isNaN(values[start - 1]!);
      const seenEnd = i < times.length && !Number.isNaN(values[i]!);
      const end = i < times.length ? times[i]! : (record.last ?? times[i - 1]!);
      runs.push({ start: times[start]!, end, on: state > threshold, whole: seenStart && seenEnd });
    }
    start = i;
  }
  return runs;
}

export const minutesOf = (run: Run): Minutes => (run.end - run.start) / 60_000;
