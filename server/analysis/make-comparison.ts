import { compareHistories } from '../../src/comparison/compare-histories.ts';
import { comparisonDocument } from '../../src/reporting/comparison/comparison-document.ts';
import { analyseStored } from './analyse-stored.ts';
import type { AnalysisProgress, StoredFiles } from './task.ts';
import type { WorkOutcome } from './work.ts';

/** Two exports compared, the earlier one first, as JSON: the document of `rimelog compare --json`. */
export async function makeComparison(
  stored: StoredFiles,
  against: StoredFiles,
  report: (progress: AnalysisProgress) => void,
): Promise<WorkOutcome> {
  const one = await analyseStored(stored, report);
  const other = await analyseStored(against, ({ stage, share }) =>
    report({ stage: stage === 'reading' ? 'reading the other export' : stage, share }),
  );
  report({ stage: 'comparing', share: null });
  const [before, after] = one.log.grid.startMs < other.log.grid.startMs ? [one, other] : [other, one];
  const compared = compareHistories(before.signals, after.signals);
  if (compared.places.length === 0) {
    return { refusal: { code: 'nothing-in-common', message: null } };
  }
  return { made: JSON.stringify(comparisonDocument(compared, before.log, after.log)) };
}
