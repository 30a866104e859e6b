import { quantile } from '../../maths/quantile.ts';
import type { Measure } from '../../model/evidence.ts';
import type { Calendar, Grid } from '../../model/grid.ts';
import type { EpochMs } from '../../units/quantities.ts';
import { held, knownMeasures, measure } from '../evidence-parts.ts';
import { type BusyPeriod, busyPeriod } from './busy-days.ts';
import { minutesOf, type Run, type RunHistory } from './run-history.ts';
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
/** What is seen through too coarse a logging is at most this certain. */
const coarseCertainty = 0.6;

/**
 * Whether a machine starts too often. `values` say where its record is known. Of a record read every Δ minutes at
 * most 30/Δ starts an hour can be seen, and those seen are a lower bound; where these are under the limit, only a rise
 * over the machine's own norm with runs too short for the logging is told.
 */
export function judgeMachine(
  history: RunHistory,
  values: Float64Array,
  limit: number,
  visible: number,
  grid: Grid,
  calendar: Calendar,
): Judged | null {
  const { starts } = history;
  const rate = startRate(starts, history.isGapless ? null : values, grid, calendar);
  const isCoarse = visible <= limit;
  const ownLimit = isCoarse ? settings.coarseShare.value * visible : settings.ownNormStarts.value;
  const period = busyPeriod(rate, limit, ownLimit, grid, calendar);
  if (period === null) return null;
  const runs = history.runs();
  const onset = grid.startMs + period.fromHour * hourMs;
  const end = period.toHour === null ? null : grid.startMs + period.toHour * hourMs;
  const since = runs.filter((run) => run.start >= onset && (end === null || run.start < end));
  if (isCoarse && Number.isNaN(period.norm)) return null;
  if (isCoarse && !showsShortRuns(runs, onset, end, grid.stepMs)) return null;
  const running = since.filter((run) => run.on && run.whole).map(minutesOf);
  const standing = since.filter((run) => !run.on && run.whole).map(minutesOf);
  const shortShare = running.filter((minutes) => minutes < settings.shortRun.value).length / running.length;
  const most = mostInAnHour(starts, onset);
  return {
    period,
    onset,
    end,
    certainty: isCoarse ? coarseCertainty : certaintyOf(period, limit),
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
      coarse: isCoarse ? 1 : 0,
    },
    since,
  };
}

/**
 * Where the logging is too coarse to count starts: most runs are seen in one reading only, so they are shorter than
 * two logging steps, and before it began far fewer were.
 */
function showsShortRuns(runs: readonly Run[], onset: EpochMs, end: EpochMs | null, stepMs: number): boolean {
  const singleShare = (from: EpochMs, to: EpochMs) => {
    const running = runs.filter((run) => run.on && run.whole && run.start >= from && run.start < to);
    return running.filter((run) => run.end - run.start < 1.5 * stepMs).length / running.length;
  };
  const now = singleShare(onset, end ?? Number.POSITIVE_INFINITY);
  const before = singleShare(Number.NEGATIVE_INFINITY, onset);
  return now >= settings.singleReadings.value && !(before > settings.singleReadings.value * now);
}

function certaintyOf(period: BusyPeriod, limit: number): number {
  const overNorm = Number.isNaN(period.norm) ? 0 : held(period.rate / period.norm / 4, 0, 1);
  const overLimit = held(period.rate / limit, 0, 1);
  return held(0.5 + 0.25 * Math.max(overNorm, overLimit) + 0.24 * period.share, 0, 0.98);
}

export function visibleStarts(intervalMs: number): number {
  return 30 / (intervalMs / 60_000);
}
