import { ImportRefusal } from '../../src/importing/readings.ts';
import type { AnalysisProgress } from './task.ts';
import type { WorkOutcome, WorkTask } from './work.ts';

type Report = (progress: AnalysisProgress) => void;

/** Makes what was asked for; each kind loads its own code. */
export async function makeWork(task: WorkTask, report: Report): Promise<WorkOutcome> {
  const { work, against } = task;
  try {
    switch (work.kind) {
      case 'month':
        return await (await import('./make-month.ts')).makeMonth(task, work.month, report);
      case 'repair':
        return await (await import('./make-repair.ts')).makeRepair(task, work, report);
      case 'comparison':
        return await (await import('./make-comparison.ts')).makeComparison(task, against!, report);
    }
  } catch (error) {
    if (!(error instanceof ImportRefusal)) throw error;
    return { refusal: { code: 'analysis-failed', message: error.message } };
  }
}
