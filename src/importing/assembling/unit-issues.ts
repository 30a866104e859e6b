import type { ImportIssue } from '../../model/import-report.ts';
import type { UnitGuess } from '../naming/guess-temperature-unit.ts';
import type { Point } from '../points/point.ts';
import type { Place } from './meaning.ts';

const written: Readonly<{ [unit: string]: string }> = { degF: '°F', degC: '°C', K: 'K' };

export function guessedUnitIssue(
  what: 'temperature' | 'pressure',
  points: readonly Point[],
  { unit, because }: UnitGuess<string>,
): ImportIssue {
  return {
    code: 'unit-guessed',
    line: null,
    column: points.length === 1 ? points[0]!.name : null,
    count: points.length,
    message: `${points.length === 1 ? `One ${what} column carries` : `${points.length} ${what} columns carry`} no unit; read as ${written[unit] ?? unit}, because ${because}. Say it in the site file (units: { ${what}: ${unit} }) or with --${what}-unit ${unit}.`,
    examples: namesOf(points),
  };
}

/** A unit that `normalize` does not write, because the guess is not sure. */
export function openUnitIssue(
  what: 'temperature' | 'pressure',
  points: readonly Point[],
  { unit, because }: UnitGuess<string>,
): ImportIssue {
  return {
    ...guessedUnitIssue(what, points, { unit, because, confidence: 0 }),
    code: 'unit-open',
    message: `In which unit ${points.length === 1 ? `is ${points[0]!.name}` : `are ${points.length} ${what} columns`}, perhaps ${written[unit] ?? unit}, because ${because}? The unit is left open; say it in the site file (units: { ${what}: ${unit} }) or with --${what}-unit ${unit}.`,
  };
}

/** Columns that stand in the other temperature scale than their neighbours. */
export function doubtfulUnitIssue(points: readonly Point[], unit: string, taken: boolean): ImportIssue {
  const names = namesOf(points).join(', ');
  const scale = written[unit] ?? unit;
  return {
    code: 'unit-doubtful',
    line: null,
    column: points[0]!.name,
    count: points.length,
    message: taken
      ? `${names}: read as ${scale}, unlike the other columns without a unit, because only in that scale do the values lie where case air stands. Name the unit in the header to settle it.`
      : `${names}: read as ${scale} because the site file says so, but the values lie where case air stands in the other scale. Check units in the site file.`,
    examples: namesOf(points),
  };
}

/** Pressures labelled bar or kPa, which may be above the atmosphere or absolute. */
export function pressureReferenceIssue(points: readonly Point[], gauge: boolean): ImportIssue {
  const names = namesOf(points).join(', ');
  const label = points[0]!.unit;
  return {
    code: gauge ? 'gauge-assumed' : 'pressure-reference',
    line: null,
    column: points.length === 1 ? points[0]!.name : null,
    count: points.length,
    message: gauge
      ? `${names}: labelled ${label}, but as absolute pressures they would be a vacuum, so they were read as above the atmosphere. Label the column ${label}g to settle it.`
      : `${names}: labelled ${label} and read as absolute. If the gauge reads above the atmosphere, label the column ${label}g; saturation temperatures rest on it.`,
    examples: namesOf(points),
  };
}

/** An amount that the site file uses as a state. */
export function stateFromAmountIssue(point: Point, onAbove: number): ImportIssue {
  return {
    code: 'state-from-amount',
    line: null,
    column: point.name,
    count: 1,
    message: `${point.name} is used as a state but logs an amount; above ${Number(onAbove.toPrecision(3))} it counts as on. Export the state itself if that is wrong.`,
  };
}

export function unexpectedUnitIssue(point: Point, place: Place): ImportIssue {
  return {
    code: 'unit-unexpected',
    line: null,
    column: point.name,
    count: 1,
    message: `${point.name} is used as a ${place}, but the export gives it in ${point.unit}; check which column the site file means.`,
  };
}

function namesOf(points: readonly Point[]): string[] {
  return points.slice(0, 3).map((point) => point.name);
}
