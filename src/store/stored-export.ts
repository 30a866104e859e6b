import type { Severity } from '../model/finding.ts';

/** An uploaded file: the name its sender gave it, for people only, and the name that it has on disk, which is ours. */
export interface StoredFile {
  readonly name: string;
  readonly storedAs: string;
  readonly bytes: number;
}

/** Why an export could not be analysed, as it is shown to the user. */
export interface StoredProblem {
  readonly code: string;
  readonly message: string;
  readonly remedy: string;
}

/** What would have somebody drive there first. */
export interface FirstStop {
  readonly place: string;
  readonly severity: Severity;
  readonly summary: string;
  /** What it costs to let it wait, for the order of many stores alone. */
  readonly weight: number;
}

/** What the list of exports says of a finished one, without opening its findings. */
export interface ResultSummary {
  readonly site: string;
  readonly timeZone: string;
  readonly start: string;
  readonly end: string;
  readonly circuits: number;
  readonly findings: Readonly<Record<Severity, number>>;
  /** True when no site file came with the export and the importer guessed one. */
  readonly guessedSite: boolean;
  /** Null where nothing is worth a stop; not there where an earlier rimelog made the analysis. */
  readonly firstStop?: FirstStop | null;
}

export type ExportState = 'waiting' | 'analysing' | 'ready' | 'failed';

/** One upload, as `export.json` keeps it. */
export interface StoredExport {
  readonly format: 'rimelog-stored-export/1';
  readonly id: string;
  readonly received: string;
  readonly state: ExportState;
  /** How often an analysis was begun; one that dies with the server twice is not begun a third time. */
  readonly attempts: number;
  readonly files: readonly StoredFile[];
  readonly siteFile: StoredFile | null;
  readonly problem: StoredProblem | null;
  readonly summary: ResultSummary | null;
}
