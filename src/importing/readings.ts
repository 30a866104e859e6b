import type { ImportReport } from '../model/import-report.ts';
import type { ExportUnit } from '../units/export-units.ts';

/** The unit of a column as the export says it, or null where nothing does. */
export type { ExportUnit } from '../units/export-units.ts';

/**
 * One point as the importer read it, still in the export's unit and at the export's own times.
 *
 * `values[i]` was read at `times[i]`. Times ascend; missing readings are NaN for wide exports (whose columns share one
 * `times` array) and simply not there for long ones, save that a point logged on change has a NaN where a word in
 * place of a value ends what was in force.
 */
export interface ReadingColumn {
  /** Header as in the export, trimmed; made unique with the file's stem where several files carry it. */
  readonly point: string;
  readonly fileStem: string;
  /** Position of the column (or of the point's first row) over all files, for output order. */
  readonly order: number;
  readonly unit: ExportUnit | null;
  readonly unitSource: 'header' | 'units-row' | 'cell' | null;
  readonly times: Float64Array;
  /** Numbers as written; statuses as 1 and 0. */
  readonly values: Float64Array;
  /** True where the cells were status words or a 0/1 column that behaves as one. */
  readonly status: boolean;
  readonly logging: 'sampled' | 'change-of-value';
  /** Times, ascending, at which a word in place of a value ends what was in force, where `values` has a NaN for others. */
  readonly ended?: Float64Array;
}

/** What the reading rooms hand to naming and assembly: every reading of every file, and the account of the rest. */
export interface Readings {
  /** In output order. */
  readonly columns: readonly ReadingColumn[];
  readonly report: ImportReport;
  readonly timeZone: string;
}

/** One file as bytes. The importer opens nothing itself. */
export interface ExportSource {
  /** Name as the user has it, `rack-a.csv`; folders inside a zip kept with `/`. */
  readonly name: string;
  /**
   * A fresh pass over the bytes; called more than once only when a second pass is needed. A chunk is valid until
   * the next one is asked for: its buffer may be used again.
   */
  open(): AsyncIterable<Uint8Array>;
  /** Size in bytes where known, for progress. */
  readonly size: number | null;
}

/** Refusal of a whole file or call: one sentence that says what it is, where, and what to do (exit status 2). */
export class ImportRefusal extends Error {
  readonly code: string;
  constructor(code: string, message: string) {
    super(message);
    this.name = 'ImportRefusal';
    this.code = code;
  }
}
