import { ImportRefusal } from '../../src/importing/readings.ts';
import { storageRefusalFrom } from '../../src/store/storage-refusal.ts';
import { analyseStored } from './analyse-stored.ts';
import { storeResult } from './store-result.ts';
import type { AnalysisOutcome, AnalysisProgress, AnalysisTask } from './task.ts';
import type { WorkOutcome, WorkTask } from './work.ts';

const reportEveryMs = 100;

/** Reports at most ten times a second, and every new stage. */
function reporter(task: Pick<AnalysisTask, 'progress'>): (progress: AnalysisProgress) => void {
  let stage = '';
  let reported = 0;
  return (progress) => {
    const now = performance.now();
    if (progress.stage === stage && now - reported < reportEveryMs) return;
    stage = progress.stage;
    reported = now;
    task.progress.postMessage(progress);
  };
}

/** Runs in a worker thread, so that the server keeps answering while a month is analysed. */
export default async function analyse(task: AnalysisTask): Promise<AnalysisOutcome> {
  const report = reporter(task);
  report({ stage: 'reading', share: null });
  try {
    const analysed = await analyseStored(task, report);
    report({ stage: 'storing', share: null });
    return { summary: await storeResult(task.folder, analysed) };
  } catch (error) {
    if (error instanceof ImportRefusal) {
      return { refusal: { code: error.code, message: withSentNames(error.message, task) } };
    }
    throw storageRefusalFrom(error);
  } finally {
    task.progress.close();
  }
}

/** The same for what is made when it is asked for, whose code is loaded with the first of it. */
export async function onDemand(task: WorkTask): Promise<WorkOutcome> {
  const { makeWork } = await import('./make-work.ts');
  const report = reporter(task);
  report({ stage: 'reading', share: null });
  try {
    return await makeWork(task, report);
  } finally {
    task.progress.close();
  }
}

/** Messages may name a file as it lies on disk: the user knows it by the name it was sent under. */
function withSentNames(message: string, { folder, files, siteFile }: AnalysisTask): string {
  let text = message.replaceAll(`${folder}/`, '').replaceAll(`${folder}\\`, '');
  for (const { storedAs, name } of siteFile === null ? files : [...files, siteFile]) {
    text = text.replaceAll(storedAs, name);
  }
  return text;
}
