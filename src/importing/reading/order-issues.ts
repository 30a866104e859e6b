import type { LineMap } from '../scan/line-map.ts';
import type { Ordering } from '../time/put-in-order.ts';
import { usualStep } from '../time/put-in-order.ts';
import type { FileContext } from './file-context.ts';
import type { RepeatedTimes } from './repeated-times.ts';

/** Reports rows out of order and rows of one time, and counts the rows left out. */
export function reportOrder(
  ordering: Ordering,
  repeats: RepeatedTimes | null,
  conflicts: Uint8Array,
  order: Int32Array | null,
  lines: LineMap,
  { issues, counts }: FileContext,
): void {
  const lineAt = (position: number): number | null =>
    lines.lineOf(order === null ? position : order[position]!);
  let conflicting = 0;
  for (let stretch = 0; stretch < conflicts.length; stretch++) {
    const start = repeats!.starts[stretch]!;
    const end = repeats!.ends[stretch]!;
    const dropped = end - start - 1;
    counts.rowsRejected += dropped;
    conflicting += conflicts[stretch]! * dropped;
    issues.add(conflicts[stretch] === 1 ? 'row-in-conflict' : 'row-repeated', {
      line: lineAt(end - 1),
      count: dropped,
    });
  }
  if (ordering.stepsBack === 0) return;
  const line = lines.lineOf(ordering.firstStepBack);
  const clock = ordering.stepsBack <= 3 && conflicting >= 3 * ordering.stepsBack;
  issues.add(clock ? 'clock-set-back' : 'rows-out-of-order', { line, count: ordering.stepsBack });
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
