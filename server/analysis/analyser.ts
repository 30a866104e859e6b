import { EventEmitter } from 'node:events';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { MessageChannel } from 'node:worker_threads';
import { Piscina } from 'piscina';
import type { ExportStore } from '../../src/store/export-store.ts';
import { StorageRefusal } from '../../src/store/storage-refusal.ts';
import type { StoredExport, StoredProblem } from '../../src/store/stored-export.ts';
import { oneLine } from '../one-line.ts';
import { Problem } from '../problem.ts';
import type { ServerLimits } from '../settings.ts';
import { monthName } from './result-names.ts';
import type { AnalysisOutcome, AnalysisProgress, AnalysisTask, MonthTask } from './task.ts';
import { workerFile } from './worker-file.ts';

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
  readonly #pool: Piscina<AnalysisTask | MonthTask, AnalysisOutcome | boolean>;
  readonly #running = new Map<string, { readonly abort: AbortController; progress: AnalysisProgress }>();
  readonly #reserved = new Set<symbol>();
  readonly #months = new Map<string, Promise<void>>();
  readonly #log: (line: string) => void;

  constructor(store: ExportStore, limits: ServerLimits, log: (line: string) => void) {
    this.#store = store;
    this.#limits = limits;
    this.#log = log;
    this.#pool = new Piscina({
      filename: workerFile(),
      minThreads: 0,
      maxThreads: limits.analysesAtOnce,
      idleTimeout: 10_000,
      resourceLimits: { maxOldGenerationSizeMb: limits.analysisHeapMebibytes },
    });
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

  /**
   * Makes the report of a month unless it is there; asked for twice at the same time it is made once. Throws a
   * Problem: `no-month`, `busy`, or why it could not be made.
   */
  async makeMonth(id: string, month: string): Promise<void> {
    if (existsSync(join(this.#store.resultFolderOf(id), monthName(month)))) return;
    const key = `${id} ${month}`;
    const making = this.#months.get(key) ?? this.#makeMonth(id, month);
    this.#months.set(key, making);
    await making.finally(() => this.#months.delete(key));
  }

  async #makeMonth(id: string, month: string): Promise<void> {
    const stored = this.#store.get(id);
    if (stored === null) throw new Problem('unknown-export');
    const giveBack = this.reserve();
    if (giveBack === null) throw new Problem('busy', { headers: { 'Retry-After': '30' } });
    const signal = AbortSignal.timeout(this.#limits.analysisMs);
    const task: MonthTask = {
      folder: this.#store.folderOf(id),
      files: stored.files,
      siteFile: stored.siteFile,
      month,
    };
    try {
      if (!(await this.#pool.run(task, { name: 'month', signal }))) throw new Problem('no-month');
    } catch (error) {
      if (error instanceof Problem) throw error;
      if (this.#store.get(id) === null) throw new Problem('unknown-export');
      const { message, remedy } = this.#problemFrom(error, signal);
      throw new Problem('analysis-failed', { detail: message, remedy });
    } finally {
      giveBack();
    }
  }

  async close(): Promise<void> {
    for (const { abort } of this.#running.values()) abort.abort();
    await this.#pool.destroy();
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
      const outcome = (await this.#pool.run(
        { folder: this.#store.folderOf(id), files, siteFile, progress },
        { transferList: [progress], signal },
      )) as AnalysisOutcome;
      if ('summary' in outcome) return { state: 'ready', summary: outcome.summary, problem: null };
      return { state: 'failed', problem: { ...outcome.refusal, remedy: '' } };
    } catch (error) {
      if (signal.aborted && signal.reason !== 'too-long') return null;
      return { state: 'failed', problem: this.#problemFrom(error, signal) };
    }
  }

  #problemFrom(error: unknown, signal: AbortSignal): StoredProblem {
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
}
