import { type ExportUnit, quantityOf } from '../../units/export-units.ts';
import type { Quantity } from '../../units/quantities.ts';
import type { SiteFile } from '../site-file/site-file.ts';
import type { Point } from './point.ts';
import type { Meaning } from './record-shelf.ts';

/** What the place that a site file gives to a point asks of it. */
export type Place =
  | 'temperature'
  | 'temperature-difference'
  | 'pressure'
  | 'status'
  | 'level'
  | 'valve'
  | 'any';

/** Units of the points that say none, found by the site file or guessed from their values. */
export type UnitsInForce = ReadonlyMap<Point, ExportUnit>;

/** The quantity and unit of a point in its place; what the export says of the unit goes before any default. */
export function meaningOf(point: Point, place: Place, units: UnitsInForce): Meaning {
  const unit = point.unit ?? units.get(point) ?? null;
  switch (place) {
    case 'temperature':
    case 'pressure':
      return measured(point, unit, place);
    case 'temperature-difference':
      return { quantity: 'temperature-difference', unit: unit !== null && isTemperature(unit) ? unit : null };
    case 'level':
      return { quantity: 'fraction', unit: unit ?? (reachesAbove(point, 1.5) ? 'percent' : null) };
    case 'status':
      return point.status || !reachesAbove(point, 1.5)
        ? { quantity: 'status', unit: null }
        : measured(point, unit, 'other');
    case 'valve':
      if (point.status) return { quantity: 'status', unit: null };
      return { quantity: 'fraction', unit: unit ?? (reachesAbove(point, 1.5) ? 'percent' : null) };
    default:
      return point.status ? { quantity: 'status', unit: null } : measured(point, unit, 'other');
  }
}

/** Whether the unit in force measures something else than the place asks for. */
export function unfitting(point: Point, place: Place, units: UnitsInForce): boolean {
  const unit = point.unit ?? units.get(point) ?? null;
  if (unit === null) return false;
  if (place === 'temperature' || place === 'pressure') return quantityOf(unit) !== place;
  if (place === 'temperature-difference') return !isTemperature(unit);
  return false;
}

/** Default units of the site file for the points whose place tells what they measure. */
export function siteDefault(place: Place, units: SiteFile['units']): ExportUnit | null {
  if (place === 'pressure') return units?.pressure ?? null;
  if (place === 'temperature' || place === 'temperature-difference') return units?.temperature ?? null;
  return null;
}

function measured(point: Point, unit: ExportUnit | null, otherwise: Quantity): Meaning {
  if (point.status && unit === null) return { quantity: 'status', unit: null };
  return { quantity: unit === null ? otherwise : quantityOf(unit), unit };
}

function isTemperature(unit: ExportUnit): boolean {
  const quantity = quantityOf(unit);
  return quantity === 'temperature' || quantity === 'temperature-difference';
}

function reachesAbove(point: Point, limit: number): boolean {
  return point.values.some((value) => value > limit);
}
