import type { FileReport, ImportIssue } from '../../model/import-report.ts';
import type { ExportUnit } from '../../units/export-units.ts';
import { collectPoints } from '../points/collect-points.ts';
import { shiftedFiles } from '../points/shifted-files.ts';
import type { ReadingColumn, Readings } from '../readings.ts';
import { convertedTemperature, convertible, sameUnit } from '../values/same-unit.ts';

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
export function joinFiles(met: Readings, stems: readonly string[]): Readings {
  const { readings, unitIssues } = inOneUnit(met);
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
      ...(point.ended === undefined ? {} : { ended: point.ended }),
    }),
  );
  const files = readings.report.files.map((file, index) => withRepeats(file, repeats.get(stems[index]!)));
  const isApart = points.some(({ name, header }) => name !== header);
  const shifted = isApart ? shiftedFiles(readings.columns) : [];
  const noticed = [...readings.report.issues, ...unitIssues, ...issues, ...shifted];
  const report = { ...readings.report, files, issues: noticed };
  return { ...readings, columns, report };
}

/**
 * Columns of one header in one unit: files in °C and °F are brought to the unit of the first, other units that
 * differ keep the columns apart.
 */
function inOneUnit(readings: Readings): { readings: Readings; unitIssues: ImportIssue[] } {
  const units = new Map<string, ExportUnit>();
  const unitIssues: ImportIssue[] = [];
  const columns = readings.columns.map((column): ReadingColumn => {
    const { unit, point, fileStem } = column;
    if (unit === null) return column;
    const first = units.get(point);
    if (first === undefined) units.set(point, unit);
    if (first === undefined || sameUnit(first, unit)) return column;
    const converts = convertible(unit, first);
    unitIssues.push({
      code: 'unit-changed',
      line: null,
      column: point,
      count: 1,
      message: `${fileStem}, column “${point}”: the unit is ${unit}, but ${first} in an earlier file; ${converts ? `the readings were converted to ${first}` : 'the columns were kept apart'}. Nothing to do. [unit-changed]`,
    });
    if (!converts) return { ...column, point: `${fileStem}:${point} (${unit})` };
    return {
      ...column,
      unit: first,
      values: column.values.map((value) => convertedTemperature(value, unit, first)),
    };
  });
  return { readings: { ...readings, columns }, unitIssues };
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
