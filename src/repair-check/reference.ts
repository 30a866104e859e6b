import { blocksADay } from '../figures/clock-blocks.ts';
import type { BlockRange } from '../figures/matched-change.ts';
import { quietDaysOfCircuit } from '../figures/quiet-days.ts';
import type { Finding } from '../model/finding.ts';
import type { CircuitSignals } from '../signals/types.ts';
import { fewestReferenceDays } from './settings.ts';

/**
 * The circuit's own past that tells what was usual: its first quiet days in a row before the window that shows the
 * fault, the later half of them left out where no finding says when the fault began. Null for fewer than two days.
 */
export function referenceBlocks(
  signals: CircuitSignals,
  findings: readonly Finding[],
  before: BlockRange,
): BlockRange | null {
  const quiet = quietDaysOfCircuit(signals, findings);
  const lastDay = Math.floor(before.from / blocksADay);
  const first = quiet.indexOf(true);
  if (first < 0 || first >= lastDay) return null;
  let end = first;
  while (end < lastDay && quiet[end]) end++;
  const isEndedByFinding = end < lastDay || quiet[lastDay] === false;
  const days = isEndedByFinding ? end - first : Math.ceil((end - first) / 2);
  if (days < fewestReferenceDays) return null;
  return { from: first * blocksADay, to: (first + days) * blocksADay };
}
