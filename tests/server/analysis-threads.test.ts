import { join } from 'node:path';
import { MessageChannel } from 'node:worker_threads';
import { expect, test } from 'vitest';
import { AnalysisThreads } from '../../server/analysis/analysis-threads.ts';
import { defaultLimits } from '../../server/settings.ts';

const requiringThread = join(import.meta.dirname, '..', 'support', 'requiring-thread.mjs');

// Node 20 aborts the process (v8::Module::IsGraphAsync) when a thread is ended while require() links an ES module.
test('threads never require() an ES module, so that ending one while it starts cannot end the server', async () => {
  const threads = new AnalysisThreads(defaultLimits, () => {}, requiringThread);
  const outcome = await threads.run<string>(
    { progress: new MessageChannel().port1 },
    new AbortController().signal,
  );
  await threads.close();
  expect(outcome).toBe('ERR_REQUIRE_ESM');
});
