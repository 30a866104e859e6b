import type { ImportIssue } from '../../model/import-report.ts';
import type { UnitGuess } from '../naming/guess-temperature-unit.ts';
import type { Place } from './meaning.ts';
import type { Point } from './point.ts';

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
    message: `${points.length === 1 ? `One ${what} column carries` : `${points.length} ${what} columns carry`} no unit; read as ${written[unit] ?? unit}, because ${because}. Say it in the site file: units: { ${what}: ${unit} }.`,
    examples: namesOf(points),
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
