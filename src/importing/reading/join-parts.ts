import type { IssueLog } from '../issues/issue-log.ts';
import { inOrder, orderByTime } from '../time/put-in-order.ts';
import { convertedTemperature, convertible, sameUnit } from '../values/same-unit.ts';
import type { RowCounts } from './file-context.ts';
import type { ReadingPart } from './reading-part.ts';
import { onceEach, repeatedTimes, timesOnce } from './repeated-times.ts';

export interface NamedPart extends ReadingPart {
  readonly name: string;
}

/** Parts of one name from several tables of a file, joined into one point unless they contradict each other. */
export function joinParts(parts: readonly ReadingPart[], issues: IssueLog, counts: RowCounts): NamedPart[] {
  const joined = new Map<string, NamedPart>();
  for (const part of parts) {
    let name = part.tally.name;
    for (let number = 2; ; number++) {
      const before = joined.get(name);
      if (before === undefined) {
        joined.set(name, { ...part, name });
        break;
      }
      const alike = inUnitOf(before, part);
      const merged = alike === null ? null : merge(before, alike);
      if (alike !== null && alike !== part) {
        issues.add('unit-changed', { column: name, count: part.values.length });
        const [from, to] = [part.tally.unit, before.tally.unit];
        issues.choose(
          `unit of “${name}” in a later table`,
          `converted from ${from} to ${to}`,
          'both tables state their unit',
          null,
        );
      }
      if (merged !== null && (merged.contradictions === 0 || merged.contradictions * 2 < merged.dropped)) {
        counts.rowsRejected += merged.dropped > 0 ? 1 : 0;
        counts.valuesRejected += merged.dropped;
        if (merged.dropped > 0) {
          const code = merged.contradictions > 0 ? 'row-in-conflict' : 'row-repeated';
          issues.add(code, { column: name, count: merged.dropped });
        }
        const ended = [before.ended, part.ended]
          .flatMap((each) => (each === undefined ? [] : [...each]))
          .sort((a, b) => a - b);
        joined.set(name, {
          ...before,
          ...merged.readings,
          ...(ended.length === 0 ? {} : { ended: Float64Array.from(ended) }),
        });
        break;
      }
      const next = `${part.tally.name} (${number})`;
      if (!joined.has(next)) issues.add('name-repeated', { column: part.tally.name, example: next });
      name = next;
    }
  }
  return [...joined.values()];
}

/** The part in the unit of an earlier one of its name; null where the units do not allow it. */
function inUnitOf(before: ReadingPart, part: ReadingPart): ReadingPart | null {
  const [from, to] = [part.tally.unit, before.tally.unit];
  if (from === null || to === null || sameUnit(from, to)) return part;
  if (!convertible(from, to)) return null;
  return { ...part, values: part.values.map((value) => convertedTemperature(value, from, to)) };
}

function merge(a: ReadingPart, b: ReadingPart) {
  const times = concatenated(a.times, b.times);
  const values = concatenated(a.values, b.values);
  const { order } = orderByTime(times);
  const sortedTimes = order === null ? times : inOrder(times, order);
  const sortedValues = order === null ? values : inOrder(values, order);
  const repeats = repeatedTimes(sortedTimes);
  if (repeats === null)
    return { readings: { times: sortedTimes, values: sortedValues }, dropped: 0, contradictions: 0 };
  const conflicts = new Uint8Array(repeats.starts.length);
  const once = onceEach(sortedValues, repeats, conflicts);
  const contradictions = conflicts.reduce((sum, mark) => sum + mark, 0);
  return {
    readings: { times: timesOnce(sortedTimes, repeats), values: once.values },
    dropped: once.dropped,
    contradictions,
  };
}

function concatenated(a: Float64Array, b: Float64Array): Float64Array {
  const whole = new Float64Array(a.length + b.length);
  whole.set(a);
  whole.set(b, a.length);
  return whole;
}
