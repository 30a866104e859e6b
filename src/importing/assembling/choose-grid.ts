import type { Grid } from '../../model/grid.ts';
import type { Point } from '../points/point.ts';
import { ImportRefusal } from '../readings.ts';
import { usualInterval } from './usual-interval.ts';

const second = 1000;
const minute = 60 * second;
const hour = 60 * minute;

/** Steps that divide a day, so that a local day is a whole number of samples. */
const sensibleSteps = [
  ...[10, 15, 20, 30].map((seconds) => seconds * second),
  ...[1, 2, 3, 4, 5, 6, 10, 12, 15, 20, 30].map((minutes) => minutes * minute),
  ...[1, 2, 3, 4, 6, 12, 24].map((hours) => hours * hour),
];
/** Memory cap: 80 million aligned values are 640 MB. A year of 150 points by the minute stays under it. */
const mostValues = 80_000_000;

export interface CutTimes {
  readonly fromMs: number | null;
  readonly toMs: number | null;
}

/**
 * The common time axis: the step is the finest usual interval among the sampled columns, brought to a step
 * that divides the day; a minute where mostly changes are logged. The first sample stands on the phase that the
 * sampled rows themselves keep, so that regular rows fall on the grid as they are.
 */
export function chooseGrid(points: readonly Point[], cut: CutTimes): Grid {
  const sampled = points.filter((point) => point.logging === 'sampled' && point.times.length > 1);
  const mostlyChanges = sampled.length < points.length / 2;
  const finest = finestOf(sampled);
  let step = finest === null ? minute : nearestStep(finest.intervalMs);
  if (mostlyChanges) step = Math.min(step, minute);
  const phase = finest === null ? 0 : phaseOf(finest.point.times, step);
  const span = spanOf(mostlyChanges ? points : sampled, cut);
  for (const coarser of sensibleSteps) {
    if ((span.toMs - span.fromMs) / step <= mostValues / points.length) break;
    step = Math.max(step, coarser);
  }
  const startMs = Math.floor((span.fromMs - phase) / step) * step + phase;
  const first = startMs < span.fromMs && cut.fromMs !== null ? startMs + step : startMs;
  const count = Math.floor((span.toMs - first) / step) + 1;
  return { startMs: first, stepMs: step, count: Math.max(1, count) };
}

function finestOf(points: readonly Point[]): { point: Point; intervalMs: number } | null {
  let finest: { point: Point; intervalMs: number } | null = null;
  for (const point of points) {
    const intervalMs = usualInterval(point.times, point.values);
    if (intervalMs < (finest?.intervalMs ?? Number.POSITIVE_INFINITY)) finest = { point, intervalMs };
  }
  return finest;
}

function nearestStep(intervalMs: number): number {
  let nearest = sensibleSteps[0]!;
  for (const step of sensibleSteps) {
    if (Math.abs(Math.log(step / intervalMs)) < Math.abs(Math.log(nearest / intervalMs))) nearest = step;
  }
  return nearest;
}

/** Where within the step most rows stand; 0 where they stand anywhere. */
function phaseOf(times: Float64Array, step: number): number {
  const counts = new Map<number, number>();
  const stride = Math.max(1, Math.floor(times.length / 1000));
  let looked = 0;
  for (let index = 0; index < times.length; index += stride, looked++) {
    const phase = times[index]! % step;
    counts.set(phase, (counts.get(phase) ?? 0) + 1);
  }
  for (const [phase, count] of counts) if (count >= looked * 0.8) return phase;
  return 0;
}

const oldestLeadMs = 24 * hour;

function spanOf(points: readonly Point[], cut: CutTimes): { fromMs: number; toMs: number } {
  const firsts = points.flatMap(({ times }) => times.at(0) ?? []).sort((a, b) => a - b);
  // A state that last changed long before the export began is told with its old time.
  const usualFirst = firsts[firsts.length >> 1] ?? Number.POSITIVE_INFINITY;
  const fromMs = firsts.find((first) => first >= usualFirst - oldestLeadMs) ?? usualFirst;
  const toMs = points.reduce(
    (last, { times }) => Math.max(last, times.at(-1) ?? last),
    Number.NEGATIVE_INFINITY,
  );
  if (fromMs > toMs) {
    throw new ImportRefusal(
      'no-readings',
      'The export holds no reading with a time; check that it is the right file.',
    );
  }
  const inside = { fromMs: Math.max(fromMs, cut.fromMs ?? fromMs), toMs: Math.min(toMs, cut.toMs ?? toMs) };
  if (inside.fromMs > inside.toMs) {
    const span = `${new Date(fromMs).toISOString()} to ${new Date(toMs).toISOString()}`;
    throw new ImportRefusal('span-empty', `--from and --to leave nothing: the export runs from ${span}.`);
  }
  return inside;
}
