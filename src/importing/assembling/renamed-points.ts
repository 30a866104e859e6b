import type { ImportIssue } from '../../model/import-report.ts';
import type { Point } from '../points/point.ts';
import { usualInterval } from './usual-interval.ts';

/** One ends and the other begins within so many readings (trade practice: two). */
const mostIntervalsBetween = 2.5;
/** Readings on either side whose medians are compared. */
const readingsCompared = 60;
const shortestLifeMs = 6 * 3_600_000;

interface Life {
  readonly point: Point;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly firstMs: number;
  readonly lastMs: number;
}

/**
 * Pairs of points of which one ends where the other begins, at the same level: perhaps one point that was
 * renamed. Offered to the user, never joined: a new probe in the old place looks the same.
 */
export function renamedPoints(points: readonly Point[]): ImportIssue[] {
  const lives = points.filter((point) => !point.status && point.logging === 'sampled').flatMap(lifeOf);
  const begins = Math.min(...lives.map(({ firstMs }) => firstMs));
  const ends = Math.max(...lives.map(({ lastMs }) => lastMs));
  const ended = lives.filter(({ lastMs }) => lastMs < ends - shortestLifeMs);
  const begun = lives.filter(({ firstMs }) => firstMs > begins + shortestLifeMs);
  const issues: ImportIssue[] = [];
  for (const before of ended) {
    const followers = begun.filter((after) => follows(before, after));
    if (followers.length === 1) issues.push(renamedIssue(before, followers[0]!));
  }
  return issues;
}

function lifeOf(point: Point): Life[] {
  const { times, values } = point;
  let firstRow = 0;
  while (firstRow < values.length && Number.isNaN(values[firstRow]!)) firstRow++;
  if (firstRow === values.length) return [];
  let lastRow = values.length - 1;
  while (Number.isNaN(values[lastRow]!)) lastRow--;
  return [{ point, firstRow, lastRow, firstMs: times[firstRow]!, lastMs: times[lastRow]! }];
}

function follows(before: Life, after: Life): boolean {
  const between = after.firstMs - before.lastMs;
  const interval = usualInterval(before.point.times, before.point.values);
  if (!(between > 0 && between <= mostIntervalsBetween * interval)) return false;
  if (before.point.unit !== after.point.unit) return false;
  const old = before.point.values.slice(Math.max(0, before.lastRow - readingsCompared), before.lastRow + 1);
  const fresh = after.point.values.slice(after.firstRow, after.firstRow + readingsCompared);
  const [low, middle, high] = quartiles(old);
  const spread = Math.max(high! - low!, 1);
  return Math.abs(quartiles(fresh)[1]! - middle!) <= spread;
}

function quartiles(values: Float64Array): number[] {
  const sorted = values.filter((value) => !Number.isNaN(value)).sort();
  return [0.25, 0.5, 0.75].map((share) => sorted[Math.round(share * (sorted.length - 1))] ?? Number.NaN);
}

function renamedIssue(before: Life, after: Life): ImportIssue {
  return {
    code: 'point-renamed',
    line: null,
    column: before.point.name,
    count: 1,
    message: `${before.point.name} ends ${new Date(before.lastMs).toISOString()} where ${after.point.name} begins, at the same level. If it is one point that was renamed, give both columns one name in the export to join them.`,
    examples: [after.point.name],
  };
}
