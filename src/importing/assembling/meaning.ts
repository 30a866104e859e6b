import { type ExportUnit, quantityOf } from '../../units/export-units.ts';
import type { Quantity } from '../../units/quantities.ts';
import type { Point } from '../points/point.ts';
import { spreadSample } from '../points/spread-sample.ts';

/** What the place that a site file gives to a point asks of it. */
export type Place =
  | 'temperature'
  | 'temperature-difference'
  | 'pressure'
  | 'status'
  | 'level'
  | 'valve'
  | 'any';

export interface Meaning {
  readonly quantity: Quantity;
  /** The unit in force: the export's own, the site's default or a guess. */
  readonly unit: ExportUnit | null;
  /** For an amount that is used as a state: the value, in the export's unit, above which it counts as on. */
  readonly onAbove: number | null;
}

/** Units of the points that say none (by the site file or guessed), or whose label was read more closely. */
export type UnitsInForce = ReadonlyMap<Point, ExportUnit>;

const status: Meaning = { quantity: 'status', unit: null, onAbove: null };

/** The quantity and unit of a point in its place. */
export function meaningOf(point: Point, place: Place, units: UnitsInForce): Meaning {
  const unit = units.get(point) ?? point.unit;
  switch (place) {
    case 'temperature':
    case 'pressure':
      return measured(point, unit, place);
    case 'temperature-difference':
      return {
        quantity: 'temperature-difference',
        unit: unit !== null && isTemperature(unit) ? unit : null,
        onAbove: null,
      };
    case 'level':
      return fraction(point, unit);
    case 'status':
      return isState(point) ? status : { ...status, onAbove: thresholdOf(point) };
    case 'valve':
      if (isState(point)) return status;
      return takesTwoValues(point) ? { ...status, onAbove: thresholdOf(point) } : fraction(point, unit);
    default:
      return point.status ? status : measured(point, unit, 'other');
  }
}

/** Whether the unit in force measures something else than the place asks for. */
export function unfitting(point: Point, place: Place, units: UnitsInForce): boolean {
  const unit = units.get(point) ?? point.unit;
  if (unit === null) return false;
  if (place === 'temperature' || place === 'pressure') return quantityOf(unit) !== place;
  if (place === 'temperature-difference') return !isTemperature(unit);
  return false;
}

function measured(point: Point, unit: ExportUnit | null, otherwise: Quantity): Meaning {
  if (point.status && unit === null) return status;
  return { quantity: unit === null ? otherwise : quantityOf(unit), unit, onAbove: null };
}

/** 0 to 100 without a unit is per cent, 0 to 1 a fraction already. */
function fraction(point: Point, unit: ExportUnit | null): Meaning {
  return { quantity: 'fraction', unit: unit ?? (highestOf(point) > 1.5 ? 'percent' : null), onAbove: null };
}

function isTemperature(unit: ExportUnit): boolean {
  const quantity = quantityOf(unit);
  return quantity === 'temperature' || quantity === 'temperature-difference';
}

function isState(point: Point): boolean {
  return point.status || point.values.every((value) => Number.isNaN(value) || value === 0 || value === 1);
}

function takesTwoValues(point: Point): boolean {
  const seen = new Set<number>();
  for (const value of point.values) {
    if (!Number.isNaN(value)) seen.add(value);
    if (seen.size > 2) return false;
  }
  return true;
}

/** A machine that draws a quarter of what it usually draws at most is running. Common practice, no source. */
const runningShare = 0.25;

function thresholdOf(point: Point): number {
  const sample = spreadSample(point.values, 4000).sort();
  const high = sample[Math.floor(0.95 * (sample.length - 1))] ?? 1;
  return high > 0 ? high * runningShare : highestOf(point) * runningShare;
}

function highestOf(point: Point): number {
  let highest = Number.NEGATIVE_INFINITY;
  for (const value of point.values) if (value > highest) highest = value;
  return highest;
}
