import type { LineMap } from '../scan/line-map.ts';
import { usualStep } from '../time/put-in-order.ts';
import type { ArrangementOutcome } from './arrangement.ts';
import type { FileContext } from './file-context.ts';

/** Reports what became of the rows of a wide table, and counts those left out. */
export function reportRows(
  outcome: ArrangementOutcome,
  lines: LineMap,
  { issues, counts }: FileContext,
): void {
  const { dropped, stepsBack, implausible, repeated, conflicting, displaced } = outcome;
  counts.valuesRejected += dropped;
  for (const [code, { count, first }] of [
    ['time-implausible', implausible],
    ['row-repeated', repeated],
    ['row-in-conflict', conflicting],
    ['row-of-skipped-hour', displaced],
  ] as const) {
    if (count === 0) continue;
    counts.rowsRejected += count;
    issues.add(code, { line: lines.lineOf(first), count });
  }
  if (stepsBack.count === 0) return;
  const clock = stepsBack.count <= 3 && conflicting.count >= 3 * stepsBack.count;
  issues.add(clock ? 'clock-set-back' : 'rows-out-of-order', {
    line: lines.lineOf(stepsBack.first),
    count: stepsBack.count,
  });
}

/** The same for one point of a long table, where every row is a reading. Steps back are the caller's to add up. */
export function reportReadings(
  outcome: ArrangementOutcome,
  column: string,
  lineOf: (index: number) => number | null,
  { issues, counts }: FileContext,
): void {
  const { dropped, implausible, repeated, conflicting, displaced } = outcome;
  counts.valuesRejected += dropped;
  for (const [code, { count, first }] of [
    ['time-implausible', implausible],
    ['row-repeated', repeated],
    ['row-in-conflict', conflicting],
    ['row-of-skipped-hour', displaced],
  ] as const) {
    if (count === 0) continue;
    counts.rowsRejected += count;
    issues.add(code, { line: lineOf(first), column, count });
  }
}

const longGap = 3_600_000;

/** Reports gaps and changes of the interval in ascending times of a regular log. */
export function reportSteps(times: Float64Array, { issues }: FileContext): void {
  const usual = usualStep(times);
  if (Number.isNaN(usual) || times.length < 10) return;
  let gaps = 0;
  let longest = 0;
  for (let at = 1; at < times.length; at++) {
    const step = times[at]! - times[at - 1]!;
    if (step <= Math.max(longGap, 5 * usual)) continue;
    gaps++;
    longest = Math.max(longest, step);
  }
  if (gaps > 0) issues.add('gap', { count: gaps, detail: `the longest lasts ${hours(longest)}` });
  const intervals = new Set<number>();
  const part = Math.floor(times.length / 8);
  if (part < 20) return;
  for (let eighth = 0; eighth < 8; eighth++) {
    const slice = times.subarray(eighth * part, (eighth + 1) * part);
    const step = usualStep(slice);
    if (sharing(slice, step) > 0.8) intervals.add(step);
  }
  if (intervals.size > 1) {
    const shown = [...intervals].map((step) => `${step / 60_000} min`).join(', ');
    issues.add('interval-changes', { detail: shown });
  }
}

function sharing(times: Float64Array, step: number): number {
  let same = 0;
  for (let at = 1; at < times.length; at++) if (times[at]! - times[at - 1]! === step) same++;
  return same / (times.length - 1);
}

function hours(ms: number): string {
  const value = ms / 3_600_000;
  return value >= 48 ? `${Math.round(value / 24)} days` : `${Math.round(value * 10) / 10} h`;
}
