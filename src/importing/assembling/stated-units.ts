import { quantityOf } from '../../units/export-units.ts';
import { nameColumns } from '../naming/role.ts';
import { collectPoints } from '../points/collect-points.ts';
import { headerOf } from '../points/point.ts';
import type { ExportUnit, ReadingColumn, Readings } from '../readings.ts';
import type { SiteFile } from '../site-file/site-file.ts';
import { placePoints } from './place-points.ts';
import { siteUnits } from './site-units.ts';

/** The readings with the site file's default units on the columns that say none. Guessed units stay out. */
export function withStatedUnits(readings: Readings, site: SiteFile | null): Readings {
  const stated = site?.units;
  if (site === null || stated === undefined) return readings;
  const { points } = collectPoints(readings);
  const { inForce } = siteUnits(nameColumns(points), placePoints(points, site), site);
  const units = new Map<string, ExportUnit>();
  for (const [{ header, fileStems }, unit] of inForce) {
    const quantity = quantityOf(unit);
    const isStated =
      (quantity === 'temperature' || quantity === 'pressure') && stated[quantity] !== undefined;
    if (isStated) for (const stem of fileStems) units.set(`${stem}:${header}`, unit);
  }
  const unitOf = (column: ReadingColumn): ExportUnit | null =>
    column.unit ?? units.get(`${column.fileStem}:${headerOf(column)}`) ?? null;
  return { ...readings, columns: readings.columns.map((column) => ({ ...column, unit: unitOf(column) })) };
}
