import { loggingKind } from '../layout/logging-kind.ts';
import type { LongTable } from '../layout/long-table.ts';
import { usualStep } from '../time/put-in-order.ts';
import {
  applyHeaderOffset,
  type OddTime,
  oddTimes,
  offsetLookup,
  runsBackwards,
  settleTimes,
} from '../time/settle-times.ts';
import { oddWindows, type ZoneTransitions } from '../time/zone.ts';
import { columnProfile } from '../values/column-profile.ts';
import { forgetProbeLetters } from '../values/forget-probe-letters.ts';
import { judgeColumn } from '../values/judge-column.ts';
import { settleStates } from '../values/settle-states.ts';
import { Arrangement, readingsIn } from './arrangement.ts';
import { judgeOddHour } from './clock-issues.ts';
import type { FileContext } from './file-context.ts';
import { reportReadings } from './order-issues.ts';
import type { ReadingPart } from './reading-part.ts';

interface PointTimes {
  readonly times: Float64Array;
  readonly rows: Uint32Array;
}

/** Times to UTC and into order, words to states, repeats out: the readings of a long table, point by point. */
export function finishLong(table: LongTable, zone: ZoneTransitions, context: FileContext): ReadingPart[] {
  const { issues, counts } = context;
  const { headerOffset } = table.plan.time;
  const stamped = offsetLookup(table.offsets.toggles);
  const hasOffset = headerOffset === null ? stamped : () => true;
  const taken = table.points.map(
    (point): PointTimes => ({ times: point.times.take(), rows: point.rows.take() }),
  );
  if (headerOffset !== null) {
    for (const { times, rows } of taken)
      applyHeaderOffset(times, (index) => rows[index]!, stamped, headerOffset);
  }
  const seconds = secondHours(taken, table, zone, hasOffset, context);
  forgetProbeLetters(table.points.map(({ tally }) => tally));
  const parts: ReadingPart[] = [];
  let stepsBack = 0;
  let firstBack = Number.POSITIVE_INFINITY;
  for (const [index, point] of table.points.entries()) {
    const { rows } = taken[index]!;
    const fileTimes = taken[index]!.times;
    const { tally } = point;
    const fileValues = point.values.take();
    const rowOf = (reading: number): number => rows[reading]!;
    const lineOf = (reading: number): number | null => table.lines.lineOf(rowOf(reading));
    const moved = settleTimes(fileTimes, rowOf, hasOffset, zone, seconds[index]!);
    const profile = columnProfile(fileValues);
    const rejectedCells = tally.rejected + tally.texts.count;
    const status = settleStates(fileValues, profile, tally, issues);
    if (!status) judgeColumn(fileValues, profile, tally, context, lineOf);
    counts.values += profile.readings + rejectedCells;
    counts.valuesRejected += tally.rejected;
    const arrangement = new Arrangement(fileTimes, moved);
    const arranged = arrangement.arrange(fileValues);
    const outcome = arrangement.outcome();
    reportReadings(outcome, tally.name, lineOf, context);
    if (outcome.stepsBack.count > 0) {
      stepsBack += outcome.stepsBack.count;
      firstBack = Math.min(firstBack, rowOf(outcome.stepsBack.first));
    }
    const logging = loggingKind(arrangement.times, arranged, profile, null);
    const { times, values } = withoutMissing(arrangement.times, arranged, logging === 'change-of-value');
    parts.push({ tally, times, values, status, logging });
  }
  if (stepsBack > 0)
    issues.add('rows-out-of-order', { line: table.lines.lineOf(firstBack), count: stepsBack });
  return withSparsePoints(parts);
}

/** Indices, point by point, of readings in the second coming of an hour. The order of the whole file decides. */
function secondHours(
  taken: readonly PointTimes[],
  table: LongTable,
  zone: ZoneTransitions,
  hasOffset: (row: number) => boolean,
  { issues }: FileContext,
): Set<number>[] {
  const seconds = taken.map(() => new Set<number>());
  const windows = oddWindows(zone);
  const met = taken.map(({ times, rows }) => oddTimes(times, (index) => rows[index]!, hasOffset, windows));
  for (const [number, window] of windows.entries()) {
    const perPoint = met.map((hours, point) => hours[number]!.map((time): PointTime => ({ ...time, point })));
    const together = perPoint.flat().sort((a, b) => a.row - b.row);
    if (together.length === 0) continue;
    const longest = taken.reduce((most, each) => (each.times.length > most.times.length ? each : most));
    if (runsBackwards(longest.times)) together.reverse();
    const stepsBack = together.filter((time, at) => at > 0 && time.wallMs < together[at - 1]!.wallMs).length;
    const sequences = stepsBack <= 1 ? [together] : perPoint;
    const step = stepsBack <= 1 ? 0 : usualStep(longest.times);
    for (const sequence of sequences) {
      for (const { point, index } of judgeOddHour(window, sequence, step, table.lines, issues)) {
        seconds[point]!.add(index);
      }
    }
  }
  return seconds;
}

interface PointTime extends OddTime {
  /** Position of the point in the table. */
  readonly point: number;
}

/**
 * The readings that hold a value. With `keepsEnds`, as a change needs it, also the first after each value that holds
 * none (a fault word): from there on the old value is in force no more.
 */
function withoutMissing(
  times: Float64Array,
  values: Float64Array,
  keepsEnds: boolean,
): { times: Float64Array; values: Float64Array } {
  if (readingsIn(values) === values.length) return { times, values };
  const keptTimes = new Float64Array(values.length);
  const keptValues = new Float64Array(values.length);
  let to = 0;
  for (let at = 0; at < values.length; at++) {
    const isMissing = Number.isNaN(values[at]!);
    if (isMissing && !(keepsEnds && to > 0 && !Number.isNaN(keptValues[to - 1]!))) continue;
    keptTimes[to] = times[at]!;
    keptValues[to++] = values[at]!;
  }
  return { times: keptTimes.slice(0, to), values: keptValues.slice(0, to) };
}

/** In a change-of-value log a point that hardly moved has too few readings to be told: it is logged like the rest. */
function withSparsePoints(parts: readonly ReadingPart[]): ReadingPart[] {
  const most = parts.reduce((count, part) => Math.max(count, part.times.length), 0);
  const changing = parts.filter((part) => part.logging === 'change-of-value').length;
  if (changing * 2 < parts.length && !(changing > 0 && most > 50)) return [...parts];
  return parts.map((part) =>
    part.times.length * 5 < most || part.times.length < 3 ? { ...part, logging: 'change-of-value' } : part,
  );
}
