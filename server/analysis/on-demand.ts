import { EventEmitter } from 'node:events';
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { MessageChannel } from 'node:worker_threads';
import type { ExportStore } from '../../src/store/export-store.ts';
import type { StoredExport } from '../../src/store/stored-export.ts';
import { Problem } from '../problem.ts';
import type { ServerLimits } from '../settings.ts';
import type { Analyser } from './analyser.ts';
import type { AnalysisThreads } from './analysis-threads.ts';
import { monthName } from './result-names.ts';
import type { AnalysisProgress, StoredFiles } from './task.ts';
import type { Work, WorkOutcome, WorkTask } from './work.ts';

/** Answers that are kept in memory: a page that is loaded again need not wait again. */
const mostKept = 50;

/** One piece of work, under way or done. Emits `progress` whenever it has got further. */
export class WorkInHand {
  readonly changes = new EventEmitter<{ progress: [] }>().setMaxListeners(0);
  readonly body: Promise<string>;
  progress: AnalysisProgress = { stage: 'waiting', share: null };

  constructor(make: (onProgress: (progress: AnalysisProgress) => void) => Promise<string>) {
    this.body = make((progress) => {
      this.progress = progress;
      this.changes.emit('progress');
    });
    this.body.catch(() => undefined);
  }
}

/**
 * Makes what is asked for of a stored export beside its findings, in the threads of the analyses: the report of a month,
 * whether a repair held, two exports compared. Asked for twice at the same time it is made once. A month is kept on
 * disk by the worker that made it, the others in memory while they are among the last.
 */
export class OnDemand {
  readonly #store: ExportStore;
  readonly #limits: ServerLimits;
  readonly #threads: AnalysisThreads;
  readonly #places: Pick<Analyser, 'reserve'>;
  readonly #known = new Map<string, WorkInHand>();

  constructor(
    store: ExportStore,
    limits: ServerLimits,
    threads: AnalysisThreads,
    places: Pick<Analyser, 'reserve'>,
  ) {
    this.#store = store;
    this.#limits = limits;
    this.#threads = threads;
    this.#places = places;
  }

  /**
   * The work for an export and, in a comparison, the other one; begun unless it is there. Throws `busy`. Its body
   * rejects with a Problem.
   */
  ask(stored: StoredExport, work: Work, against: StoredExport | null = null): WorkInHand {
    const key = JSON.stringify([stored.id, work]);
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const giveBack = this.#isOnDisk(stored.id, work) ? () => undefined : this.#places.reserve();
    if (giveBack === null) throw new Problem('busy', { headers: { 'Retry-After': '30' } });
    const inHand = new WorkInHand((onProgress) =>
      this.#make(stored, work, against, onProgress).finally(giveBack),
    );
    this.#known.set(key, inHand);
    inHand.body.then(
      () => this.#forgetOldest(work.kind === 'month' ? key : null),
      () => this.#known.delete(key),
    );
    return inHand;
  }

  /** A month lies on disk once it is made, and is large: it is not kept here too. */
  #forgetOldest(onDisk: string | null): void {
    if (onDisk !== null) this.#known.delete(onDisk);
    const [oldest] = this.#known.keys();
    if (this.#known.size > mostKept && oldest !== undefined) this.#known.delete(oldest);
  }

  async #make(
    stored: StoredExport,
    work: Work,
    against: StoredExport | null,
    onProgress: (progress: AnalysisProgress) => void,
  ): Promise<string> {
    if (work.kind === 'month' && this.#isOnDisk(stored.id, work)) {
      return readFile(this.#monthPath(stored.id, work.month), 'utf8');
    }
    const abort = new AbortController();
    const { port1, port2 } = new MessageChannel();
    let limit: NodeJS.Timeout | undefined;
    port1.on('message', (progress: AnalysisProgress) => {
      limit ??= setTimeout(() => abort.abort(), this.#limits.analysisMs);
      onProgress(progress);
    });
    const task: WorkTask = {
      ...this.#filesOf(stored),
      work,
      against: against === null ? null : this.#filesOf(against),
      progress: port2,
    };
    try {
      const outcome = await this.#threads.run<WorkOutcome>(task, abort.signal, 'onDemand');
      if ('made' in outcome) return outcome.made;
      const { code, message } = outcome.refusal;
      throw new Problem(code, message === null ? {} : { detail: message });
    } catch (error) {
      if (error instanceof Problem) throw error;
      if ([stored, against].some((one) => one !== null && this.#store.get(one.id) === null)) {
        throw new Problem('unknown-export');
      }
      const { message, remedy } = this.#threads.problemFrom(error, abort.signal);
      throw new Problem('analysis-failed', { detail: message, remedy });
    } finally {
      clearTimeout(limit);
      port1.close();
    }
  }

  #monthPath(id: string, month: string): string {
    return join(this.#store.resultFolderOf(id), monthName(month));
  }

  #isOnDisk(id: string, work: Work): boolean {
    return work.kind === 'month' && existsSync(this.#monthPath(id, work.month));
  }

  #filesOf({ id, files, siteFile }: StoredExport): StoredFiles {
    return { folder: this.#store.folderOf(id), files, siteFile };
  }
}
