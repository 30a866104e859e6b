import { join } from 'node:path';
import { fullMonths, monthOf } from '../../src/audit/month.ts';
import { monthAudit } from '../../src/audit/month-audit.ts';
import { auditReport } from '../../src/reporting/audit/audit-report.ts';
import { writeFileAtomically } from '../../src/store/atomic-write.ts';
import { storageRefusalFrom } from '../../src/store/storage-refusal.ts';
import { analyseStored } from './analyse-stored.ts';
import { monthName } from './result-names.ts';
import type { MonthTask } from './task.ts';

/** Writes the report of one month beside the result; false where the export does not hold the whole of it. */
export async function makeMonth(task: MonthTask): Promise<boolean> {
  const analysed = await analyseStored(task);
  if (!fullMonths(analysed.log).includes(task.month)) return false;
  const audit = await monthAudit(analysed, monthOf(analysed.log, task.month)!);
  const page = auditReport(audit, analysed.report);
  try {
    await writeFileAtomically(join(task.folder, 'result', monthName(task.month)), page);
  } catch (error) {
    throw storageRefusalFrom(error);
  }
  return true;
}
