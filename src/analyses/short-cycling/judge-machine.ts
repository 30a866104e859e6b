import { quantile } from '../../maths/quantile.ts';
import type { Measure } from '../../model/evidence.ts';
import type { Calendar, Grid } from '../../model/grid.ts';
import type { EpochMs } from '../../units/quantities.ts';
import { held, knownMeasures, measure } from '../evidence-parts.ts';
import { type BusyPeriod, busyPeriod } from './busy-days.ts';
import { minutesOf, type Run, startTimes } from './run-history.ts';
import { settings } from './settings.ts';
import { mostInAnHour, startRate } from './start-rate.ts';

export interface Judged {
  readonly period: BusyPeriod;
  readonly onset: EpochMs;
  readonly end: EpochMs | null;
  readonly certainty: number;
  readonly measures: readonly Measure[];
  readonly features: { readonly [name: string]: number };
  /** Runs and stops since it began. */
  readonly since: readonly Run[];
}

const hourMs = 3_600_000;

/**
 * Whether a machine starts too often. `values` say where its record is known. Of a record read every Δ minutes at
 * most 30/Δ starts an hour can be seen, and those seen are a lower bound: the own-norm limit is lowered to suit.
 */
export function judgeMachine(
  runs: readonly Run[],
  values: Float64Array,
  limit: number,
  visible: number,
  grid: Grid,
  calendar: Calendar,
): Judged | null {
  const starts = startTimes(runs);
  const rate = startRate(starts, values, grid, calendar);
  const ownLimit = Math.min(settings.ownNormStarts.value, 0.7 * visible);
  const period = busyPeriod(rate, limit, ownLimit, grid, calendar);
  if (period === null) return null;
  const onset = grid.startMs + period.fromHour * hourMs;
  const end = period.toHour === null ? null : grid.startMs + period.toHour * hourMs;
  const since = runs.filter((run) => run.start >= onset && (end === null || run.start < end));
  const running = since.filter((run) => run.on && run.whole).map(minutesOf);
  const standing = since.filter((run) => !run.on && run.whole).map(minutesOf);
  const shortShare = running.filter((minutes) => minutes < settings.shortRun.value).length / running.length;
  const most = mostInAnHour(starts, onset);
  return {
    period,
    onset,
    end,
    certainty: certaintyOf(period, limit),
    measures: knownMeasures([
      measure('startsPerHour', period.rate, '{starts}/h'),
      measure('usualStartsPerHour', period.norm, '{starts}/h'),
      measure('mostStartsInAnHour', most, '{starts}/h'),
      measure('shortRunShare', 100 * shortShare, '%'),
      measure('shortestTenthOfRuns', quantile(running, 0.1), 'min'),
      measure('shortestTenthOfStops', quantile(standing, 0.1), 'min'),
    ]),
    features: {
      startsPerHour: period.rate,
      normRatio: period.rate / period.norm,
      limitRatio: most / limit,
      shortRunShare: shortShare,
      busyShare: period.share,
    },
    since,
  };
}

function certaintyOf(period: BusyPeriod, limit: number): number {
  const overNorm = Number.isNaN(period.norm) ? 0 : held(period.rate / period.norm / 4, 0, 1);
  const overLimit = held(period.rate / limit, 0, 1);
  return held(0.5 + 0.25 * Math.max(overNorm, overLimit) + 0.24 * period.share, 0, 0.98);
}

export function visibleStarts(intervalMs: number): number {
  return 30 / (intervalMs / 60_000);
}
