import type { Grid } from '../../model/grid.ts';
import type { Point } from '../points/point.ts';

const minute = 60_000;
/**
 * How long every point together may be silent before the log counts as interrupted. One quiet change-of-value
 * column proves nothing; all of them at once do. Common practice, no source.
 */
const silenceMs = { withSampled: 15 * minute, manyPoints: 60 * minute, fewPoints: 24 * 60 * minute };
const manyPoints = 4;
const medianGaps = 20;

/** 1 at each sample that lies in a stretch in which no point of the export was logged for too long. */
export function silentSamples(points: readonly Point[], grid: Grid): Uint8Array {
  const alive = new Uint8Array(grid.count);
  const looked = new Set<Float64Array>();
  for (const point of points) {
    if (looked.has(point.times) && point.logging === 'sampled') continue;
    looked.add(point.times);
    markAlive(point, grid, alive);
  }
  const gaps = gapsBetween(alive);
  const limit = longestQuiet(points, grid, gaps);
  const silent = new Uint8Array(grid.count);
  for (const { from, to } of gaps) {
    // The last reading before the stretch still stands for one sample.
    if (to - from > limit) silent.fill(1, from + 2, to);
  }
  return silent;
}

function markAlive({ times, values, logging }: Point, grid: Grid, alive: Uint8Array): void {
  for (let row = 0; row < times.length; row++) {
    if (logging === 'change-of-value' && Number.isNaN(values[row]!)) continue;
    const sample = Math.ceil((times[row]! - grid.startMs) / grid.stepMs);
    if (sample >= 0 && sample < grid.count) alive[sample] = 1;
  }
}

/** Pairs of neighbouring samples at which something was logged. */
function gapsBetween(alive: Uint8Array): { from: number; to: number }[] {
  const gaps: { from: number; to: number }[] = [];
  let from = 0;
  for (let sample = 1; sample < alive.length; sample++) {
    if (alive[sample] === 0) continue;
    gaps.push({ from, to: sample });
    from = sample;
  }
  if (from < alive.length - 1) gaps.push({ from, to: alive.length });
  return gaps;
}

function longestQuiet(
  points: readonly Point[],
  grid: Grid,
  gaps: readonly { from: number; to: number }[],
): number {
  const lengths = gaps.map(({ from, to }) => to - from).sort((a, b) => a - b);
  const median = lengths[lengths.length >> 1] ?? 1;
  const changing = points.filter((point) => point.times.length > 2).length;
  const floorMs = points.some((point) => point.logging === 'sampled')
    ? silenceMs.withSampled
    : changing >= manyPoints
      ? silenceMs.manyPoints
      : silenceMs.fewPoints;
  return Math.max(floorMs / grid.stepMs, medianGaps * median);
}
