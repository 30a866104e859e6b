import { ImportRefusal } from '../../src/importing/readings.ts';
import { serviceTime } from '../../src/pipeline/service-time.ts';
import { checkRepair } from '../../src/repair-check/check-repair.ts';
import { repairDocument } from '../../src/reporting/repair/repair-document.ts';
import { analyseStored } from './analyse-stored.ts';
import type { AnalysisProgress, StoredFiles } from './task.ts';
import type { Work, WorkOutcome } from './work.ts';

type RepairWork = Extract<Work, { kind: 'repair' }>;

/** Whether a repair held, as JSON: the document of `rimelog verify --json`. */
export async function makeRepair(
  stored: StoredFiles,
  { circuit, serviced }: RepairWork,
  report: (progress: AnalysisProgress) => void,
): Promise<WorkOutcome> {
  const { log, signals, diagnosis } = await analyseStored(stored, report);
  if (!log.circuits.some(({ id }) => id === circuit)) {
    return { refusal: { code: 'unknown-circuit', message: null } };
  }
  report({ stage: 'comparing', share: null });
  try {
    const at = serviceTime(serviced, log, 'The time of service');
    const check = checkRepair(signals, diagnosis.findings, circuit, at);
    return { made: JSON.stringify(repairDocument(check, log)) };
  } catch (error) {
    if (!(error instanceof ImportRefusal)) throw error;
    return { refusal: { code: 'bad-service-time', message: error.message } };
  }
}
