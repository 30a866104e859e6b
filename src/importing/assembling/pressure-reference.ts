import type { ImportIssue } from '../../model/import-report.ts';
import type { DisplayUnits } from '../../model/log.ts';
import { kilopascalDifferenceFrom } from '../../units/convert.ts';
import type { NamedColumn } from '../naming/role.ts';
import type { Point } from '../points/point.ts';
import type { ExportUnit } from '../readings.ts';
import { pressureReferenceIssue } from './unit-issues.ts';

/** A running rack never holds less than this absolute, so lower readings are gauge readings. Common practice. */
const vacuumBelowKilopascal = 105;

/** Units that leave open whether the atmosphere counts, and what they are called where it does not; millibars are the weather's. */
const gaugeOf: ReadonlyMap<ExportUnit | null, ExportUnit> = new Map([
  ['bar', 'barg'],
  ['kPa', 'kPag'],
  ['MPa', 'MPag'],
  ['kgfcm2', 'kgfcm2g'],
]);

/**
 * `bar`, `kPa` and their kind leave open whether the atmosphere counts. The site file settles it (`barg`, `bar`, `kPa`), else
 * readings that would be a vacuum, else they are absolute; a choice that nobody made is reported. Enters gauge
 * units in `inForce`.
 */
export function settlePressureReferences(
  columns: readonly NamedColumn[],
  inForce: Map<Point, ExportUnit>,
  stated: DisplayUnits['pressure'] | undefined,
): ImportIssue[] {
  const open = columns.filter(({ point }) => gaugeOf.has(point.unit));
  if (open.length === 0 || stated === 'bar' || stated === 'kPa') return [];
  const vacuum = open.some(
    ({ point, facts }) => kilopascalDifferenceFrom(facts.median, point.unit!) < vacuumBelowKilopascal,
  );
  const gauge = stated === 'barg' || vacuum;
  if (gauge) for (const { point } of open) inForce.set(point, gaugeOf.get(point.unit)!);
  if (stated === 'barg') return [];
  const points = open.map(({ point }) => point);
  return [pressureReferenceIssue(points, gauge)];
}
