import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { EvaluationCase } from './cases.ts';
import type { CaseOutcome } from './outcome.ts';
import type { RunOptions } from './run-case.ts';

/** Runs the cases in `workers` processes; outcomes come back in the order of the cases. */
export async function runAll(
  cases: readonly EvaluationCase[],
  options: RunOptions,
  workers: number,
  onDone: (done: number) => void,
): Promise<CaseOutcome[]> {
  const outcomes: CaseOutcome[] = [];
  let next = 0;
  let done = 0;
  const work = async (): Promise<void> => {
    const worker = fork(fileURLToPath(new URL('./worker.ts', import.meta.url)), [JSON.stringify(options)], {
      execArgv: ['--import', 'tsx', '--max-old-space-size=2048'],
      serialization: 'advanced',
    });
    while (next < cases.length) {
      const at = next++;
      outcomes[at] = await ask(worker, cases[at]!);
      onDone(++done);
    }
    worker.disconnect();
  };
  await Promise.all(Array.from({ length: Math.max(1, Math.min(workers, cases.length)) }, work));
  return outcomes;
}

function ask(worker: ChildProcess, one: EvaluationCase): Promise<CaseOutcome> {
  return new Promise<CaseOutcome>((resolve, reject) => {
    worker.once('message', (message) => resolve(message as CaseOutcome));
    worker.once('error', reject);
    worker.once('exit', (code) => reject(new Error(`The worker ended with ${code} at seed ${one.seed}.`)));
    // A dialect's naming is a function and cannot travel; the worker draws it again from the seed.
    worker.send({ ...one, dialect: null });
  }).finally(() => worker.removeAllListeners());
}
