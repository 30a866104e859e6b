import { loggingKind } from '../layout/logging-kind.ts';
import type { LongTable } from '../layout/long-table.ts';
import { inOrder, orderByTime, plausibleSpan, usualStep } from '../time/put-in-order.ts';
import { type OddTime, oddTimes, offsetLookup, runsBackwards, settleTimes } from '../time/settle-times.ts';
import { oddWindows, type ZoneTransitions } from '../time/zone.ts';
import { columnProfile } from '../values/column-profile.ts';
import { judgeColumn } from '../values/judge-column.ts';
import { settleStates } from '../values/settle-states.ts';
import { judgeOddHour } from './clock-issues.ts';
import type { FileContext } from './file-context.ts';
import type { ReadingPart } from './reading-part.ts';
import { onceEach, repeatedTimes, timesOnce } from './repeated-times.ts';

interface PointTimes {
  readonly times: Float64Array;
  readonly rows: Uint32Array;
}

/** Times to UTC and into order, words to states, repeats out: the readings of a long table, point by point. */
export function finishLong(table: LongTable, zone: ZoneTransitions, context: FileContext): ReadingPart[] {
  const { issues, counts } = context;
  const hasOffset = offsetLookup(table.offsets.toggles);
  const taken = table.points.map(
    (point): PointTimes => ({ times: point.times.take(), rows: point.rows.take() }),
  );
  const seconds = secondHours(taken, table, zone, hasOffset, context);
  const parts: ReadingPart[] = [];
  let stepsBack = 0;
  let firstBack = Number.POSITIVE_INFINITY;
  for (const [index, point] of table.points.entries()) {
    const { rows } = taken[index]!;
    let { times } = taken[index]!;
    const { tally } = point;
    let values: Float64Array = point.values.take();
    const rowOf = (reading: number): number => rows[reading]!;
    settleTimes(times, rowOf, hasOffset, zone, seconds[index]!);
    const profile = columnProfile(values);
    const rejectedCells = tally.rejected + tally.texts.count;
    const status = settleStates(values, profile, tally, issues);
    if (!status)
      judgeColumn(values, profile, tally, context, (reading) => table.lines.lineOf(rowOf(reading)));
    counts.values += profile.numbers + profile.marks + rejectedCells;
    counts.valuesRejected += tally.rejected;
    const ordering = orderByTime(times);
    if (ordering.order !== null) {
      times = inOrder(times, ordering.order);
      values = inOrder(values, ordering.order);
      stepsBack += ordering.stepsBack;
      if (ordering.stepsBack > 0) firstBack = Math.min(firstBack, rowOf(ordering.firstStepBack));
    }
    ({ times, values } = withoutMissing(times, values));
    const span = plausibleSpan(times);
    if (span.from > 0 || span.to < times.length) {
      const count = times.length - (span.to - span.from);
      counts.rowsRejected += count;
      counts.valuesRejected += count;
      issues.add('time-implausible', { column: tally.name, count });
      times = times.slice(span.from, span.to);
      values = values.slice(span.from, span.to);
    }
    const repeats = repeatedTimes(times);
    if (repeats !== null) {
      const conflicts = new Uint8Array(repeats.starts.length);
      const once = onceEach(values, repeats, conflicts);
      const differing = conflicts.reduce(
        (sum, mark, at) => sum + mark * (repeats.ends[at]! - repeats.starts[at]! - 1),
        0,
      );
      counts.rowsRejected += once.dropped;
      counts.valuesRejected += once.dropped;
      if (differing > 0) issues.add('row-in-conflict', { column: tally.name, count: differing });
      if (once.dropped > differing)
        issues.add('row-repeated', { column: tally.name, count: once.dropped - differing });
      times = timesOnce(times, repeats);
      values = once.values;
    }
    parts.push({ tally, times, values, status, logging: loggingKind(times, values, profile, null) });
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
    const together = met.flatMap((perPoint, point) => perPoint[number]!.map((time) => ({ ...time, point })));
    if (together.length === 0) continue;
    together.sort((a, b) => a.row - b.row);
    const longest = taken.reduce((most, each) => (each.times.length > most.times.length ? each : most));
    if (runsBackwards(longest.times)) together.reverse();
    const interleaved =
      together.filter((time, at) => at > 0 && time.wallMs < together[at - 1]!.wallMs).length <= 1;
    const sequences: (OddTime & { point: number })[][] = interleaved
      ? [together]
      : met.map((perPoint, point) => perPoint[number]!.map((time) => ({ ...time, point })));
    for (const [at, sequence] of sequences.entries()) {
      const step = interleaved ? 0 : usualStep(taken[at]!.times);
      for (const time of judgeOddHour(window, sequence, step, table.lines, issues)) {
        const owner = sequence.find((each) => each === time)?.point ?? at;
        seconds[owner]!.add(time.index);
      }
    }
  }
  return seconds;
}

function withoutMissing(
  times: Float64Array,
  values: Float64Array,
): { times: Float64Array; values: Float64Array } {
  const count = readingsIn(values);
  if (count === values.length) return { times, values };
  const keptTimes = new Float64Array(count);
  const keptValues = new Float64Array(count);
  let to = 0;
  for (let at = 0; at < values.length; at++) {
    if (Number.isNaN(values[at]!)) continue;
    keptTimes[to] = times[at]!;
    keptValues[to++] = values[at]!;
  }
  return { times: keptTimes, values: keptValues };
}

function readingsIn(values: Float64Array): number {
  let count = 0;
  for (let at = 0; at < values.length; at++) if (!Number.isNaN(values[at]!)) count++;
  return count;
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
