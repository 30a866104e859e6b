import type { ImportIssue } from '../../model/import-report.ts';
import type { DisplayUnits } from '../../model/log.ts';
import type { NamedColumn } from '../naming/role.ts';
import type { Point } from '../points/point.ts';
import type { ExportUnit } from '../readings.ts';
import { pressureReferenceIssue } from './unit-issues.ts';

/** A running rack never holds less than this absolute, so lower readings are gauge readings. Common practice. */
const vacuumBelowKilopascal = 105;

/**
 * `bar` and `kPa` leave open whether the atmosphere counts. The site file settles it (`barg`, `bar`, `kPa`), else
 * readings that would be a vacuum, else they are absolute; a choice that nobody made is reported. Enters gauge
 * units in `inForce`.
 */
export function settlePressureReferences(
  columns: readonly NamedColumn[],
  inForce: Map<Point, ExportUnit>,
  stated: DisplayUnits['pressure'] | undefined,
): ImportIssue[] {
  const open = columns.filter(({ point }) => point.unit === 'bar' || point.unit === 'kPa');
  if (open.length === 0 || stated === 'bar' || stated === 'kPa') return [];
  const vacuum = open.some(
    ({ point, facts }) => facts.median * (point.unit === 'bar' ? 100 : 1) < vacuumBelowKilopascal,
  );
  const gauge = stated === 'barg' || vacuum;
  if (gauge) for (const { point } of open) inForce.set(point, point.unit === 'bar' ? 'barg' : 'kPag');
  if (stated === 'barg') return [];
  const points = open.map(({ point }) => point);
  return [pressureReferenceIssue(points, gauge)];
}
