import { EventEmitter } from 'node:events';
import { MessageChannel } from 'node:worker_threads';
import type { ExportStore } from '../../src/store/export-store.ts';
import type { StoredExport, StoredProblem } from '../../src/store/stored-export.ts';
import { oneLine } from '../one-line.ts';
import type { ServerLimits } from '../settings.ts';
import type { AnalysisThreads } from './analysis-threads.ts';
import type { AnalysisOutcome, AnalysisProgress, AnalysisTask } from './task.ts';

/** An analysis that was begun this often and never ended took the server down with it. */
const mostAttempts = 2;

const interrupted: StoredProblem = {
  code: 'interrupted',
  message: 'The server stopped during the analysis, twice.',
  remedy: 'Send a shorter span, or fewer files at a time.',
};

/**
 * Runs analyses in worker threads, a fixed number at a time, the others waiting in line. Emits the id of an export
 * whenever its state or progress changes.
 */
export class Analyser {
  readonly changes = new EventEmitter<Record<string, []>>().setMaxListeners(0);
  readonly #store: ExportStore;
  readonly #limits: ServerLimits;
  readonly #threads: AnalysisThreads;
  readonly #running = new Map<string, { readonly abort: AbortController; progress: AnalysisProgress }>();
  readonly #reserved = new Set<symbol>();
  readonly #log: (line: string) => void;

  constructor(
    store: ExportStore,
    limits: ServerLimits,
    threads: AnalysisThreads,
    log: (line: string) => void,
  ) {
    this.#store = store;
    this.#limits = limits;
    this.#log = log;
    this.#threads = threads;
  }

  /**
   * A place to run or wait, kept while an upload is received; null when none is free. Give it back when no analysis
   * comes of it, or as one is started.
   */
  reserve(): (() => void) | null {
    const places = this.#limits.analysesAtOnce + this.#limits.analysesWaiting;
    if (this.#running.size + this.#reserved.size >= places) return null;
    const place = Symbol('place');
    this.#reserved.add(place);
    return () => this.#reserved.delete(place);
  }

  progressOf(id: string): AnalysisProgress | null {
    return this.#running.get(id)?.progress ?? null;
  }

  /** Takes up what a stopped server left undone. */
  async resume(): Promise<void> {
    for (const { id, state, attempts } of this.#store.list()) {
      if (state !== 'waiting' && state !== 'analysing') continue;
      if (attempts >= mostAttempts) await this.#store.update(id, { state: 'failed', problem: interrupted });
      else this.start(id);
    }
  }

  /** Puts the export in line; it is done when its state says so. */
  start(id: string): void {
    this.#running.set(id, { abort: new AbortController(), progress: { stage: 'waiting', share: null } });
    void this.#analyse(id).catch((error) => this.#log(`error: ${oneLine(String(error?.stack ?? error))}`));
  }

  /** Stops the analysis of an export that is being removed; returns when its thread has let go. */
  stop(id: string): void {
    this.#running.get(id)?.abort.abort();
  }

  async close(): Promise<void> {
    for (const { abort } of this.#running.values()) abort.abort();
    await this.#threads.close();
  }

  async #analyse(id: string): Promise<void> {
    const stored = this.#store.get(id);
    const running = this.#running.get(id);
    if (stored === null || running === undefined) return;
    const { port1, port2 } = new MessageChannel();
    let limit: NodeJS.Timeout | undefined;
    port1.on('message', (progress: AnalysisProgress) => {
      running.progress = progress;
      if (limit === undefined) {
        limit = setTimeout(() => running.abort.abort('too-long'), this.#limits.analysisMs);
        void this.#store
          .update(id, { state: 'analysing', attempts: stored.attempts + 1 })
          .catch(() => undefined);
      }
      this.changes.emit(id);
    });
    try {
      const change = await this.#run(stored, port2, running.abort.signal);
      if (change !== null) await this.#store.update(id, change);
    } finally {
      clearTimeout(limit);
      port1.close();
      this.#running.delete(id);
      this.changes.emit(id);
    }
  }

  async #run(
    { id, files, siteFile }: StoredExport,
    progress: AnalysisTask['progress'],
    signal: AbortSignal,
  ): Promise<Partial<StoredExport> | null> {
    try {
      const task: AnalysisTask = { folder: this.#store.folderOf(id), files, siteFile, progress };
      const outcome = await this.#threads.run<AnalysisOutcome>(task, signal);
      if ('summary' in outcome) return { state: 'ready', summary: outcome.summary, problem: null };
      return { state: 'failed', problem: { ...outcome.refusal, remedy: '' } };
    } catch (error) {
      if (signal.aborted && signal.reason !== 'too-long') return null;
      return { state: 'failed', problem: this.#threads.problemFrom(error, signal) };
    }
  }
}
