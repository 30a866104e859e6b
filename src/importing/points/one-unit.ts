import type { ImportIssue } from '../../model/import-report.ts';
import { exportTemperatureFrom, insideValueFrom } from '../../units/convert.ts';
import { quantityOf } from '../../units/export-units.ts';
import type { ReadingColumn } from '../readings.ts';

/** Columns of one header whose files state different temperature units, brought to the unit of the first. */
export function oneUnit(
  columns: readonly ReadingColumn[],
  header: string,
): { inOneUnit: readonly ReadingColumn[]; issue: ImportIssue | null } {
  const unit = columns.find((column) => column.unit !== null)?.unit ?? null;
  const other = columns.filter((column) => column.unit !== null && column.unit !== unit);
  const temperatures = [...other.map((column) => column.unit), unit].every(
    (stated) => stated !== null && quantityOf(stated) === 'temperature',
  );
  if (unit === null || other.length === 0 || !temperatures) return { inOneUnit: columns, issue: null };
  const inOneUnit = columns.map((column) => {
    if (!other.includes(column)) return column;
    const values = column.values.map((value) =>
      exportTemperatureFrom(insideValueFrom(value, column.unit, 'temperature', 0), unit),
    );
    return { ...column, unit, values };
  });
  return {
    inOneUnit,
    issue: {
      code: 'unit-changed',
      line: null,
      column: header,
      count: other.reduce((count, column) => count + column.values.length, 0),
      message: `${header}: the files state different units (${unit}, ${other[0]!.unit}); all readings were brought to ${unit}, which is exact.`,
    },
  };
}
