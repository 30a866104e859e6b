import { isSampled, loggingKind, regularity } from '../layout/logging-kind.ts';
import type { WideTable } from '../layout/wide-table.ts';
import { usualStep } from '../time/put-in-order.ts';
import {
  applyHeaderOffset,
  oddTimes,
  offsetLookup,
  runsBackwards,
  settleTimes,
} from '../time/settle-times.ts';
import { oddWindows, type ZoneTransitions } from '../time/zone.ts';
import { forgetProbeLetters } from '../values/forget-probe-letters.ts';
import { judgeColumn } from '../values/judge-column.ts';
import { settleStates } from '../values/settle-states.ts';
import type { ValueTally } from '../values/value-tally.ts';
import { Arrangement } from './arrangement.ts';
import { judgeOddHour } from './clock-issues.ts';
import type { FileContext } from './file-context.ts';
import { reportRows, reportSteps } from './order-issues.ts';
import type { ReadingPart } from './reading-part.ts';

/** Times to UTC and into order, words to states, repeats out: the readings of a wide table. */
export function finishWide(table: WideTable, zone: ZoneTransitions, context: FileContext): ReadingPart[] {
  const { issues, counts } = context;
  const fileTimes = table.takeTimes();
  const rowOf = (index: number): number => index;
  const { headerOffset } = table.plan.time;
  const stamped = offsetLookup(table.offsets.toggles);
  if (headerOffset !== null) applyHeaderOffset(fileTimes, rowOf, stamped, headerOffset);
  const hasOffset = headerOffset === null ? stamped : () => true;
  const windows = oddWindows(zone);
  const seconds = new Set<number>();
  const odd = oddTimes(fileTimes, rowOf, hasOffset, windows);
  if (odd.some((sequence) => sequence.length > 0)) {
    const step = usualStep(fileTimes);
    const backwards = runsBackwards(fileTimes);
    for (const [number, sequence] of odd.entries()) {
      if (backwards) sequence.reverse();
      const later = judgeOddHour(windows[number]!, sequence, step, table.lines, issues);
      for (const { index } of later) seconds.add(index);
    }
  }
  const moved = settleTimes(fileTimes, rowOf, hasOffset, zone, seconds);
  const arrangement = new Arrangement(fileTimes, moved);
  const { times } = arrangement;
  const regular = regularity(times, null);
  forgetProbeLetters(table.tallies);
  const parts: ReadingPart[] = [];
  for (const [index, column] of table.plan.columns.entries()) {
    const tally = table.tallies[index]!;
    const fileValues = table.takeValues(column.at);
    const profile = table.profileOf(index);
    const rejectedCells = tally.rejected + tally.texts.count;
    const filled = isSampled(regular, profile, times.length) ? null : rowsWithValue(fileValues);
    const status = settleStates(fileValues, profile, tally, issues);
    if (!status) judgeColumn(fileValues, profile, tally, context, (row) => table.lines.lineOf(row));
    counts.values += profile.readings + rejectedCells;
    counts.valuesRejected += tally.rejected;
    const values = arrangement.arrange(fileValues);
    const logging = loggingKind(times, values, profile, regular);
    const ended =
      filled === null || logging === 'sampled' ? null : endedTimes(fileTimes, fileValues, filled, tally);
    parts.push({ tally, times, values, status, logging, ...(ended === null ? {} : { ended }) });
  }
  reportRows(arrangement.outcome(), table.lines, context);
  reportSteps(times, context);
  return parts;
}

function rowsWithValue(values: Float64Array): Uint8Array {
  return Uint8Array.from(values, (value) => (Number.isNaN(value) ? 0 : 1));
}

/**
 * Times of the rows that say something else than a value: a word, or a number that was found to be none. An empty cell
 * of a log of changes says that nothing changed; these say that what was in force is so no more. Null for none.
 */
function endedTimes(
  times: Float64Array,
  values: Float64Array,
  filled: Uint8Array,
  { wordsAt }: ValueTally,
): Float64Array | null {
  for (const row of wordsAt?.take() ?? []) filled[row] = 1;
  const ended = times.filter((_, row) => filled[row] === 1 && Number.isNaN(values[row]!));
  return ended.length === 0 ? null : ended.sort();
}
