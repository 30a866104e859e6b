import type { MessagePort } from 'node:worker_threads';
import { Piscina } from 'piscina';
import { StorageRefusal } from '../../src/store/storage-refusal.ts';
import type { StoredProblem } from '../../src/store/stored-export.ts';
import { oneLine } from '../one-line.ts';
import type { ServerLimits } from '../settings.ts';
import { workerFile } from './worker-file.ts';

/**
 * Threads load their module by import() alone. The pool tries require() first, and Node 20 aborts the whole process
 * when a thread is ended while require() links an ES module. Older releases of Node 20 have no such require().
 */
const importOnly = process.allowedNodeEnvironmentFlags.has('--experimental-require-module')
  ? ['--no-experimental-require-module']
  : [];

/** The threads that analyse, a fixed number at a time, and what their faults mean. */
export class AnalysisThreads {
  readonly #pool: Piscina;
  readonly #limits: ServerLimits;
  readonly #log: (line: string) => void;

  constructor(limits: ServerLimits, log: (line: string) => void, file = workerFile()) {
    this.#limits = limits;
    this.#log = log;
    this.#pool = new Piscina({
      filename: file,
      execArgv: importOnly,
      minThreads: 0,
      maxThreads: limits.analysesAtOnce,
      idleTimeout: 10_000,
      resourceLimits: { maxOldGenerationSizeMb: limits.analysisHeapMebibytes },
    });
  }

  /** Runs the function `name` of the worker. Rejects with whatever `problemFrom` makes sense of. */
  async run<Outcome>(
    task: { readonly progress: MessagePort },
    signal: AbortSignal,
    name = 'default',
  ): Promise<Outcome> {
    return (await this.#pool.run(task, { name, transferList: [task.progress], signal })) as Outcome;
  }

  /** What a failed run says to whoever asked for it; a fault of our own goes to the server's output too. */
  problemFrom(error: unknown, signal: AbortSignal): StoredProblem {
    if (signal.aborted) {
      const minutes = Math.round(this.#limits.analysisMs / 60_000);
      return {
        code: 'analysis-too-long',
        message: `The analysis took longer than ${minutes} minutes, the most this server gives it.`,
        remedy: 'Send a shorter span, or fewer files at a time.',
      };
    }
    if (error instanceof StorageRefusal || (error as Error | null)?.name === 'StorageRefusal') {
      const { code, message, remedy } = error as StorageRefusal;
      return { code, message, remedy };
    }
    if ((error as { code?: string } | null)?.code === 'ERR_WORKER_OUT_OF_MEMORY') {
      return {
        code: 'out-of-memory',
        message: `The analysis needed more memory than this server gives it (${this.#limits.analysisHeapMebibytes} MiB).`,
        remedy: 'Send a shorter span, or fewer files at a time.',
      };
    }
    this.#log(`error in an analysis: ${oneLine(String((error as Error | null)?.stack ?? error))}`);
    return {
      code: 'internal',
      message: 'A fault in rimelog itself stopped the analysis.',
      remedy: 'Please report it with the first lines of the export.',
    };
  }

  async close(): Promise<void> {
    await this.#pool.destroy();
  }
}
