import type { IssueLog } from '../issues/issue-log.ts';
import type { LineMap } from '../scan/line-map.ts';
import type { OddTime } from '../time/settle-times.ts';
import { secondComing } from '../time/settle-times.ts';
import type { OddWindow } from '../time/zone.ts';

/**
 * Tells the two comings of an hour apart and reports what was met: gives the times of the second coming.
 * `sequence` holds the times of one odd hour in the order of the file.
 */
export function judgeOddHour<T extends OddTime>(
  window: OddWindow,
  sequence: readonly T[],
  intervalMs: number,
  lines: LineMap,
  issues: IssueLog,
): readonly T[] {
  if (sequence.length === 0) return [];
  const line = lines.lineOf(Math.min(sequence[0]!.row, sequence.at(-1)!.row));
  if (window.kind === 'never') {
    issues.add('skipped-hour', { line, count: sequence.length });
    return [];
  }
  const second = secondComing(sequence, intervalMs);
  if (second.length > 0) issues.add('repeated-hour', { line, count: sequence.length });
  else if (sequence.length > 1) issues.add('repeated-hour-once', { line, count: sequence.length });
  return second;
}
