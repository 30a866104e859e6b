import type { FileReport } from '../../model/import-report.ts';
import { collectPoints } from '../points/collect-points.ts';
import type { ReadingColumn, Readings } from '../readings.ts';

/** What one file lost to the files before it. */
interface Repeats {
  values: number;
  rows: number;
}

/**
 * Points that stand in several files become one where the files continue or repeat each other, and are told
 * apart by the file's stem where they do not. Readings that an earlier file has already are counted as left
 * out in the later one.
 */
export function joinFiles(readings: Readings, stems: readonly string[]): Readings {
  const { points, issues } = collectPoints(readings);
  const repeats = new Map<string, Repeats>(stems.map((stem) => [stem, { values: 0, rows: 0 }]));
  for (const point of points) {
    if (point.fileStems.length < 2) continue;
    const parts = readings.columns.filter(
      (column) => point.fileStems.includes(column.fileStem) && headerIs(column, point.header),
    );
    countRepeats(parts, repeats);
  }
  const columns = points.map(
    (point): ReadingColumn => ({
      point: point.name,
      fileStem: point.fileStems[0]!,
      order: point.order,
      unit: point.unit,
      unitSource: unitSourceOf(readings, point.header),
      times: point.times,
      values: point.values,
      status: point.status,
      logging: point.logging,
    }),
  );
  const files = readings.report.files.map((file, index) => withRepeats(file, repeats.get(stems[index]!)));
  const report = { ...readings.report, files, issues: [...readings.report.issues, ...issues] };
  return { ...readings, columns, report };
}

function headerIs(column: ReadingColumn, header: string): boolean {
  return column.point === header || column.point === `${column.fileStem}:${header}`;
}

function unitSourceOf(readings: Readings, header: string): ReadingColumn['unitSource'] {
  return (
    readings.columns.find((column) => headerIs(column, header) && column.unit !== null)?.unitSource ?? null
  );
}

/** Counts, file by file, readings at times that an earlier file has as well. */
function countRepeats(parts: readonly ReadingColumn[], repeats: Map<string, Repeats>): void {
  for (let later = 1; later < parts.length; later++) {
    const { times, values, fileStem } = parts[later]!;
    const before = parts.slice(0, later);
    const cursors = before.map(() => 0);
    let count = 0;
    for (let at = 0; at < times.length; at++) {
      if (Number.isNaN(values[at]!)) continue;
      const met = before.some((earlier, index) => {
        let cursor = cursors[index]!;
        while (cursor < earlier.times.length && earlier.times[cursor]! < times[at]!) cursor++;
        cursors[index] = cursor;
        return earlier.times[cursor] === times[at] && !Number.isNaN(earlier.values[cursor]!);
      });
      if (met) count++;
    }
    const found = repeats.get(fileStem);
    if (found === undefined) continue;
    found.values += count;
    found.rows = Math.max(found.rows, count);
  }
}

function withRepeats(file: FileReport, repeats: Repeats | undefined): FileReport {
  if (repeats === undefined || repeats.values === 0) return file;
  const rows = Math.min(repeats.rows, file.rows - file.rowsRejected);
  const issue = {
    code: 'row-repeated',
    line: null,
    column: null,
    count: repeats.values,
    message: `${file.name}: ${repeats.values} readings stand in an earlier file with the same time and were counted once. Nothing to do. [row-repeated]`,
  };
  return {
    ...file,
    rowsRejected: file.rowsRejected + rows,
    valuesRejected: file.valuesRejected + repeats.values,
    issues: [...file.issues, issue],
  };
}
