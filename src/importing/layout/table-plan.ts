import type { ExportUnit } from '../../units/export-units.ts';
import type { NamesLeftOut } from '../header/find-header.ts';
import type { Reshaping } from './reshaping/reshaping.ts';

/** How the time column is written. The numeric kinds count from 1970, or days from 1899-12-30 (`serial`). */
export type TimeColumnKind = 'calendar' | 'unix-s' | 'unix-ms' | 'unix-us' | 'unix-ns' | 'serial';

export interface TimeColumn {
  readonly at: number;
  /** Column of the time of day where date and time stand apart, else null. */
  readonly clockAt: number | null;
  readonly kind: TimeColumnKind;
  /** Only the first row of each day carries the date; the rows below it are of the same day. Null where every row does. */
  readonly dateOnceADay: 'oldest-first' | 'newest-first' | null;
  /** Minutes from UTC that the header states for stamps without an offset (`Time (UTC)`), or null. */
  readonly headerOffset: number | null;
}

export interface ValueColumn {
  readonly at: number;
  readonly name: string;
  readonly unit: ExportUnit | null;
  readonly unitSource: 'header' | 'units-row' | null;
  /** Another unit that the name has while the units row names `unit`; null for none. */
  readonly otherUnit: ExportUnit | null;
}

export interface LongColumns {
  /** Columns whose texts together name the point. */
  readonly point: readonly number[];
  readonly value: number;
  readonly unit: number | null;
  readonly quality: number | null;
  /** The quality column counts as OPC does: 192 is good, 0 bad. */
  readonly qualityCounted: boolean;
}

/** What one table of a file is: found once from its first rows, then followed for every row. */
export interface TablePlan {
  readonly time: TimeColumn;
  /** Cells of a full row. */
  readonly width: number;
  /** True where the writer leaves out empty cells at the end of rows. */
  readonly trimmedRows: boolean;
  /** Position of the first row of data among the rows looked at. */
  readonly firstDataRow: number;
  /** Header cells as shown, or null where there is none. */
  readonly header: readonly string[] | null;
  readonly headerRow: number | null;
  /** What else could have named the columns; null for nothing. */
  readonly namesLeftOut: NamesLeftOut | null;
  readonly columns: readonly ValueColumn[];
  /** Null for a wide table. */
  readonly long: LongColumns | null;
  /** Columns passed over (row numbers, further times), by name. */
  readonly ignored: readonly { readonly at: number; readonly name: string; readonly why: string }[];
  /** How written rows become those that the plan speaks of; null where they are these. */
  readonly reshaping: Reshaping | null;
}

export interface SampleRow {
  readonly cells: readonly string[];
  readonly line: number;
}
