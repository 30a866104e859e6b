import { join } from 'node:path';
import { fullMonths, monthOf } from '../../src/audit/month.ts';
import { monthAudit } from '../../src/audit/month-audit.ts';
import { auditReport } from '../../src/reporting/audit/audit-report.ts';
import { writeFileAtomically } from '../../src/store/atomic-write.ts';
import { storageRefusalFrom } from '../../src/store/storage-refusal.ts';
import { analyseStored } from './analyse-stored.ts';
import { allDays, monthName } from './result-names.ts';
import type { AnalysisProgress, StoredFiles } from './task.ts';
import type { WorkOutcome } from './work.ts';

/**
 * The report of one month, or of all days, as a page, written beside the result too; a month of which the export does
 * not hold all is refused.
 */
export async function makeMonth(
  stored: StoredFiles,
  month: string,
  report: (progress: AnalysisProgress) => void,
): Promise<WorkOutcome> {
  const analysed = await analyseStored(stored, report);
  const name = month === allDays ? null : month;
  if (name !== null && !fullMonths(analysed.log).includes(name)) {
    return { refusal: { code: 'no-month', message: null } };
  }
  report({ stage: 'making the tables', share: null });
  const audit = await monthAudit(analysed, monthOf(analysed.log, name)!);
  const page = auditReport(audit, analysed.report);
  try {
    await writeFileAtomically(join(stored.folder, 'result', monthName(month)), page);
  } catch (error) {
    throw storageRefusalFrom(error);
  }
  return { made: page };
}
