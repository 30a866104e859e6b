/** One thing that the importer noticed, counted and located (contract §4 `import`). */
export interface ImportIssue {
  /** Stable code, catalogued in docs/reference/import-issues.md. */
  readonly code: string;
  /** First line it concerns, from 1 at the start of the file as the user has it; null for the whole file. */
  readonly line: number | null;
  /** Column header, or null. */
  readonly column: string | null;
  readonly count: number;
  /** What happened, where, and what to do next. */
  readonly message: string;
  /** Up to three cells or lines as written. */
  readonly examples?: readonly string[];
}

/** A choice between two possible readings of the file, with its reason and the flag that overrides it. */
export interface ImportChoice {
  readonly about: string;
  readonly chosen: string;
  readonly because: string;
  readonly override: string | null;
}

/** Rows and values of one file: every one is imported or counted as rejected with its reason. */
export interface FileReport {
  readonly name: string;
  /** Data rows met, and those left out whole. */
  readonly rows: number;
  readonly rowsRejected: number;
  /** Cells that hold something, and those of them that gave no reading. */
  readonly values: number;
  readonly valuesRejected: number;
  readonly issues: readonly ImportIssue[];
  readonly choices: readonly ImportChoice[];
}

export interface ImportReport {
  readonly timeZone: string;
  /** Where the zone came from. */
  readonly timeZoneSource: 'site' | 'option' | 'machine' | 'offsets-in-export';
  readonly files: readonly FileReport[];
  /** Issues of the log as a whole: overlapping files, guessed circuits. */
  readonly issues: readonly ImportIssue[];
}
