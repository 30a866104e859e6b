import type { MessagePort } from 'node:worker_threads';
import type { Stage } from '../../src/pipeline/gather-readings.ts';
import type { ResultSummary, StoredFile } from '../../src/store/stored-export.ts';

/** The upload as it lies on disk. */
export interface StoredFiles {
  /** Folder of the export; the result goes into a folder of its own there. */
  readonly folder: string;
  readonly files: readonly StoredFile[];
  readonly siteFile: StoredFile | null;
}

/** What a worker thread is given. */
export interface AnalysisTask extends StoredFiles {
  readonly progress: MessagePort;
}

export interface AnalysisProgress {
  readonly stage:
    | Stage
    | 'waiting'
    | 'storing'
    | 'making the tables'
    | 'comparing'
    | 'reading the other export';
  /** 0 to 1 within the stage, where it can be told. */
  readonly share: number | null;
}

/** Refusals cross the thread as values: an error would lose its code on the way. */
export type AnalysisOutcome =
  | { readonly summary: ResultSummary }
  | { readonly refusal: { readonly code: string; readonly message: string } };
