import type { ImportIssue } from '../../model/import-report.ts';
import type { DisplayUnits } from '../../model/log.ts';
import { type ExportUnit, quantityOf } from '../../units/export-units.ts';
import { guessTemperatureUnit } from '../naming/guess-temperature-unit.ts';
import { nameColumn } from '../naming/role.ts';
import type { SiteFile } from '../site-file/site-file.ts';
import { type UnitsInForce, unfitting } from './meaning.ts';
import type { PlacedPoints } from './place-points.ts';
import type { Point } from './point.ts';

export interface SiteUnits {
  readonly inForce: UnitsInForce;
  readonly display: DisplayUnits;
  readonly issues: readonly ImportIssue[];
}

/** The unit of every column that says none, and the units in which the site reads its findings. */
export function siteUnits(points: readonly Point[], placed: PlacedPoints, site: SiteFile): SiteUnits {
  const inForce = new Map<Point, ExportUnit>();
  const issues: ImportIssue[] = [];
  const silent = points.filter((point) => point.unit === null && !point.status);
  const kinds = new Map(silent.map((point) => [point, kindOf(point, placed)] as const));
  const ofKind = (kind: string): Point[] => silent.filter((point) => kinds.get(point) === kind);

  const temperatures = ofKind('temperature');
  const cases = temperatures.filter((point) => placed.places.has(point));
  const guess = guessTemperatureUnit(cases.length > 0 ? cases : temperatures);
  const temperature = site.units?.temperature ?? guess.unit;
  for (const point of temperatures) inForce.set(point, temperature);
  if (temperatures.length > 0 && site.units?.temperature === undefined) {
    issues.push({
      code: 'unit-guessed',
      line: null,
      column: null,
      count: temperatures.length,
      message: `${temperatures.length} temperature columns carry no unit; read as ${temperature === 'degF' ? '°F' : '°C'}, because ${guess.because}. Say it in the site file: units: { temperature: degF } or degC.`,
      examples: temperatures.slice(0, 3).map((point) => point.name),
    });
  }
  const display = displayUnits(points, site, temperatures.length > 0 ? temperature : null);
  const pressures = ofKind('pressure');
  const pressure = site.units?.pressure ?? display.pressure;
  for (const point of pressures) inForce.set(point, pressure);
  if (pressures.length > 0 && site.units?.pressure === undefined) {
    issues.push({
      code: 'unit-guessed',
      line: null,
      column: null,
      count: pressures.length,
      message: `${pressures.length} pressure columns carry no unit; read as ${pressure}. Say it in the site file: units: { pressure: ${pressure} }.`,
      examples: pressures.slice(0, 3).map((point) => point.name),
    });
  }
  for (const [point, place] of placed.places) {
    if (!unfitting(point, place, inForce)) continue;
    issues.push({
      code: 'unit-unexpected',
      line: null,
      column: point.name,
      count: 1,
      message: `${point.name} is used as a ${place} but its unit says ${point.unit}; check the site file.`,
    });
  }
  return { inForce, display, issues };
}

function kindOf(point: Point, placed: PlacedPoints): string {
  const place = placed.places.get(point);
  if (place === 'temperature' || place === 'temperature-difference') return 'temperature';
  if (place !== undefined && place !== 'any') return place;
  return nameColumn(point).kind;
}

function displayUnits(
  points: readonly Point[],
  site: SiteFile,
  guessed: 'degF' | 'degC' | 'K' | null,
): DisplayUnits {
  const commonest = (quantity: 'temperature' | 'pressure'): ExportUnit | null => {
    const counts = new Map<ExportUnit, number>();
    for (const { unit } of points) {
      if (unit !== null && quantityOf(unit) === quantity) counts.set(unit, (counts.get(unit) ?? 0) + 1);
    }
    return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null;
  };
  const temperature =
    site.units?.temperature ?? shownTemperature(commonest('temperature')) ?? guessed ?? 'degF';
  const pressure =
    site.units?.pressure ??
    shownPressure(commonest('pressure')) ??
    (temperature === 'degF' ? 'psig' : 'barg');
  return { temperature, pressure };
}

function shownTemperature(unit: ExportUnit | null): DisplayUnits['temperature'] | null {
  return unit === 'degF' || unit === 'degC' || unit === 'K' ? unit : null;
}

function shownPressure(unit: ExportUnit | null): DisplayUnits['pressure'] | null {
  if (unit === 'bara') return 'bar';
  if (unit === 'kPag') return 'kPa';
  return unit === 'psig' || unit === 'psia' || unit === 'bar' || unit === 'barg' || unit === 'kPa'
    ? unit
    : null;
}
