import { type EvaluationCase, rebuildDialect } from './cases.ts';
import { failedCase, type RunOptions, runCase } from './run-case.ts';

/** Runs the cases that it is sent, one at a time. */
const options = JSON.parse(process.argv[2]!) as RunOptions;
process.on('message', async (one) => {
  const whole = rebuildDialect(one as EvaluationCase, options);
  process.send!(await runCase(whole, options).catch((problem: unknown) => failedCase(whole, problem)));
});
