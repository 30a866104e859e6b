import type { ImportIssue } from '../../model/import-report.ts';
import type { DisplayUnits } from '../../model/log.ts';
import { type ExportUnit, quantityOf } from '../../units/export-units.ts';
import { standsInOtherScale } from '../naming/guess-temperature-unit.ts';
import { type GuessedUnits, guessUnits } from '../naming/guess-units.ts';
import type { NamedColumn } from '../naming/role.ts';
import type { Point } from '../points/point.ts';
import type { SiteFile } from '../site-file/site-file.ts';
import { meaningOf, type UnitsInForce, unfitting } from './meaning.ts';
import type { PlacedPoints } from './place-points.ts';
import { settlePressureReferences } from './pressure-reference.ts';
import {
  doubtfulUnitIssue,
  guessedUnitIssue,
  stateFromAmountIssue,
  unexpectedUnitIssue,
} from './unit-issues.ts';

export interface SiteUnits {
  readonly inForce: UnitsInForce;
  readonly display: DisplayUnits;
  /** What nobody states, and why it was taken. */
  readonly guess: GuessedUnits;
  readonly issues: readonly ImportIssue[];
}

/**
 * The unit of every column that says none, and the units in which the site reads its findings. `stated` is the
 * site file as the user gave it: what it says is obeyed, what it leaves open is guessed column by column.
 */
export function siteUnits(
  columns: readonly NamedColumn[],
  placed: PlacedPoints,
  stated: SiteFile | null,
): SiteUnits {
  const silent = columns.filter(({ point }) => point.unit === null && !point.status);
  const ofKind = (kind: string): NamedColumn[] => silent.filter((column) => kindIn(placed, column) === kind);
  const temperatures = ofKind('temperature');
  const pressures = ofKind('pressure');
  const cases = temperatures.filter(({ point }) => placed.places.get(point) === 'temperature');
  const units = columns.flatMap(({ point }) => point.unit ?? []);
  const guess = guessUnits(cases.length > 0 ? cases : temperatures, pressures, units, stated?.units);

  const inForce = new Map<Point, ExportUnit>();
  const issues: ImportIssue[] = [];
  const temperature = stated?.units?.temperature ?? guess.temperature?.unit ?? null;
  if (temperature !== null) for (const { point } of temperatures) inForce.set(point, temperature);
  if (temperature === 'degF' || temperature === 'degC') {
    const odd = cases.filter((column) => standsInOtherScale(column, temperature)).map(({ point }) => point);
    const other = temperature === 'degF' ? 'degC' : 'degF';
    const mayChange = stated?.units?.temperature === undefined;
    if (mayChange) for (const point of odd) inForce.set(point, other);
    if (odd.length > 0) issues.push(doubtfulUnitIssue(odd, mayChange ? other : temperature, mayChange));
  }
  if (guess.temperature !== null)
    issues.push(guessedUnitIssue('temperature', pointsOf(temperatures), guess.temperature));

  const display = displayUnits(units, stated, temperature);
  for (const { point } of pressures) inForce.set(point, guess.pressure?.unit ?? display.pressure);
  if (guess.pressure !== null) issues.push(guessedUnitIssue('pressure', pointsOf(pressures), guess.pressure));
  issues.push(...settlePressureReferences(columns, inForce, stated?.units?.pressure));
  for (const [point, place] of placed.places) {
    const { onAbove } = meaningOf(point, place, inForce);
    if (onAbove !== null) issues.push(stateFromAmountIssue(point, onAbove));
    if (unfitting(point, place, inForce)) issues.push(unexpectedUnitIssue(point, place));
  }
  return { inForce, display, guess, issues };
}

/** What a column measures: its place in the site file decides, else its name and values. */
function kindIn(placed: PlacedPoints, { point, kind }: NamedColumn): string {
  const place = placed.places.get(point);
  if (place === undefined || place === 'any') return kind;
  return place === 'temperature-difference' ? 'temperature' : place;
}

function pointsOf(columns: readonly NamedColumn[]): Point[] {
  return columns.map(({ point }) => point);
}

function displayUnits(
  units: readonly ExportUnit[],
  site: SiteFile | null,
  guessed: 'degF' | 'degC' | 'K' | null,
): DisplayUnits {
  const commonest = (quantity: 'temperature' | 'pressure'): ExportUnit | null => {
    const counts = new Map<ExportUnit, number>();
    for (const unit of units) {
      if (quantityOf(unit) === quantity) counts.set(unit, (counts.get(unit) ?? 0) + 1);
    }
    return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null;
  };
  const temperature =
    site?.units?.temperature ?? shownTemperature(commonest('temperature')) ?? guessed ?? 'degF';
  const pressure =
    site?.units?.pressure ??
    shownPressure(commonest('pressure')) ??
    (temperature === 'degF' ? 'psig' : 'barg');
  return { temperature, pressure };
}

function shownTemperature(unit: ExportUnit | null): DisplayUnits['temperature'] | null {
  return unit === 'degF' || unit === 'degC' || unit === 'K' ? unit : null;
}

function shownPressure(unit: ExportUnit | null): DisplayUnits['pressure'] | null {
  if (unit === 'bara' || unit === 'MPa' || unit === 'mbar' || unit === 'kgfcm2') return 'bar';
  if (unit === 'MPag' || unit === 'mbarg' || unit === 'kgfcm2g') return 'barg';
  if (unit === 'kPag') return 'kPa';
  return unit === 'psig' || unit === 'psia' || unit === 'bar' || unit === 'barg' || unit === 'kPa'
    ? unit
    : null;
}
