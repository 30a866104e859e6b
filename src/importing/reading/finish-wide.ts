import { loggingKind, regularity } from '../layout/logging-kind.ts';
import type { WideTable } from '../layout/wide-table.ts';
import { inOrder, orderByTime, plausibleSpan, usualStep } from '../time/put-in-order.ts';
import { oddTimes, offsetLookup, runsBackwards, settleTimes } from '../time/settle-times.ts';
import { oddWindows, type ZoneTransitions } from '../time/zone.ts';
import { columnProfile } from '../values/column-profile.ts';
import { judgeColumn } from '../values/judge-column.ts';
import { settleStates } from '../values/settle-states.ts';
import { judgeOddHour } from './clock-issues.ts';
import type { FileContext } from './file-context.ts';
import { reportOrder, reportSteps } from './order-issues.ts';
import type { ReadingPart } from './reading-part.ts';
import { onceEach, repeatedTimes, timesOnce } from './repeated-times.ts';

/** Times to UTC and into order, words to states, repeats out: the readings of a wide table. */
export function finishWide(table: WideTable, zone: ZoneTransitions, context: FileContext): ReadingPart[] {
  const { issues, counts } = context;
  const fileTimes = table.takeTimes();
  const hasOffset = offsetLookup(table.offsets.toggles);
  const rowOf = (index: number): number => index;
  const windows = oddWindows(zone);
  const backwards = runsBackwards(fileTimes);
  const seconds = new Set<number>();
  const step = usualStep(fileTimes);
  for (const [number, sequence] of oddTimes(fileTimes, rowOf, hasOffset, windows).entries()) {
    if (backwards) sequence.reverse();
    for (const { index } of judgeOddHour(windows[number]!, sequence, step, table.lines, issues))
      seconds.add(index);
  }
  settleTimes(fileTimes, rowOf, hasOffset, zone, seconds);
  const ordering = orderByTime(fileTimes);
  const { order } = ordering;
  const ordered = order === null ? fileTimes : inOrder(fileTimes, order);
  const span = plausibleSpan(ordered);
  const whole = span.from === 0 && span.to === ordered.length;
  const kept = whole ? ordered : ordered.slice(span.from, span.to);
  const repeats = repeatedTimes(kept);
  const times = repeats === null ? kept : timesOnce(kept, repeats);
  const conflicts = new Uint8Array(repeats?.starts.length ?? 0);
  const regular = regularity(times, null);
  const parts: ReadingPart[] = [];
  for (const [index, column] of table.plan.columns.entries()) {
    const tally = table.tallies[index]!;
    let values = table.takeValues(column.at);
    const profile = columnProfile(values);
    const rejectedCells = tally.rejected + tally.texts.count;
    const status = settleStates(values, profile, tally, issues);
    if (!status) judgeColumn(values, profile, tally, context, (row) => table.lines.lineOf(row));
    counts.values += profile.numbers + profile.marks + rejectedCells;
    if (order !== null) values = inOrder(values, order);
    if (!whole) {
      const cut = values.slice(span.from, span.to);
      counts.valuesRejected += readingsIn(values) - readingsIn(cut);
      values = cut;
    }
    if (repeats !== null) {
      const once = onceEach(values, repeats, conflicts);
      counts.valuesRejected += once.dropped;
      values = once.values;
    }
    counts.valuesRejected += tally.rejected;
    parts.push({ tally, times, values, status, logging: loggingKind(times, values, profile, regular) });
  }
  if (!whole) {
    const outside = order === null ? (span.from === 0 ? span.to : 0) : order[span.from === 0 ? span.to : 0]!;
    const count = ordered.length - kept.length;
    counts.rowsRejected += count;
    issues.add('time-implausible', { line: table.lines.lineOf(outside), count });
  }
  reportOrder(ordering, repeats, conflicts, order, table.lines, context);
  reportSteps(times, context);
  return parts;
}

function readingsIn(values: Float64Array): number {
  let count = 0;
  for (let at = 0; at < values.length; at++) if (!Number.isNaN(values[at]!)) count++;
  return count;
}
