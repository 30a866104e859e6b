import type { ExportUnit, ReadingColumn } from '../readings.ts';

/** One point of the site: a column, or the columns of several files that continue each other, joined by time. */
export interface Point {
  /** The header, or STEM:HEADER where other files carry the same header for another point. */
  readonly name: string;
  readonly header: string;
  /** Files that hold it, in the order of the export. */
  readonly fileStems: readonly string[];
  readonly order: number;
  readonly unit: ExportUnit | null;
  /** Ascending, without repetition. */
  readonly times: Float64Array;
  readonly values: Float64Array;
  readonly status: boolean;
  readonly logging: 'sampled' | 'change-of-value';
  /** Times, ascending, at which a word in place of a value ends what was in force. */
  readonly ended?: Float64Array;
}

/** The header as the file has it, without the stem that made it unique. */
export function headerOf(column: ReadingColumn): string {
  const stem = `${column.fileStem}:`;
  return column.point.startsWith(stem) && column.point.length > stem.length
    ? column.point.slice(stem.length)
    : column.point;
}
