import type { ImportIssue } from '../../model/import-report.ts';
import { quantityOf } from '../../units/export-units.ts';
import { sureEnough } from '../naming/guess-note.ts';
import { guessFromColumns } from '../naming/guess-site.ts';
import type { UnitGuess } from '../naming/guess-temperature-unit.ts';
import { nameColumns } from '../naming/role.ts';
import { zoneOf } from '../naming/zone-notes.ts';
import { collectPoints } from '../points/collect-points.ts';
import { headerOf, type Point } from '../points/point.ts';
import type { ExportUnit, ReadingColumn, Readings } from '../readings.ts';
import type { SiteFile } from '../site-file/site-file.ts';
import { placePoints } from './place-points.ts';
import { siteUnits } from './site-units.ts';
import { guessedUnitIssue, openUnitIssue } from './unit-issues.ts';

/** A guess as sure as this is written beside the values of an export that says no unit. */
const sureEnoughToWrite = 0.9;

/**
 * The readings with a unit on the columns that say none: the one that the site file or an option states, else the
 * one that is guessed as `assembleLog` guesses it, where that is sure. Values stay as they are; every guess, and
 * every unit left open, is added to the report.
 */
export function withUnderstoodUnits(readings: Readings, site: SiteFile | null): Readings {
  if (readings.columns.every(({ unit, status }) => unit !== null || status)) return readings;
  const { points } = collectPoints(readings);
  const columns = nameColumns(points);
  const described = site?.circuits !== undefined || site?.racks !== undefined;
  const inForce = described ? site : guessFromColumns(columns, site, zoneOf(readings)).site;
  const units = siteUnits(columns, placePoints(points, inForce), site);
  const named = new Set<Point>(described ? placePoints(points, site).places.keys() : []);
  for (const { point, confidence } of columns) if (confidence >= sureEnough) named.add(point);

  const written = new Map<Point, ExportUnit>();
  const issues: ImportIssue[] = [];
  for (const quantity of ['temperature', 'pressure'] as const) {
    const silent = [...units.inForce].filter(
      ([point, unit]) => point.unit === null && quantityOf(unit) === quantity,
    );
    const guess = units.guess[quantity];
    const { taken, open } = sorted(silent, guess, named);
    for (const [point, unit] of taken) written.set(point, unit);
    if (guess === null) continue;
    if (taken.length > 0) issues.push(guessedUnitIssue(quantity, pointsOf(taken), guess));
    if (open.length > 0) issues.push(openUnitIssue(quantity, pointsOf(open), guess));
  }
  issues.push(
    ...units.issues.filter(
      ({ code, column }) =>
        code === 'unit-doubtful' && [...written.keys()].some(({ name }) => name === column),
    ),
  );
  return labelled(readings, written, issues);
}

type Silent = readonly [Point, ExportUnit];

/** Which columns take the unit and which stay without: a stated one stands on all, a guessed one where it is sure. */
function sorted(
  silent: readonly Silent[],
  guess: UnitGuess<string> | null,
  named: ReadonlySet<Point>,
): { taken: readonly Silent[]; open: readonly Silent[] } {
  if (guess === null) return { taken: silent, open: [] };
  if (guess.confidence < sureEnoughToWrite) return { taken: [], open: silent };
  return {
    taken: silent.filter(([point]) => named.has(point)),
    open: silent.filter(([point]) => !named.has(point)),
  };
}

function pointsOf(silent: readonly Silent[]): Point[] {
  return silent.map(([point]) => point);
}

function labelled(
  readings: Readings,
  written: ReadonlyMap<Point, ExportUnit>,
  issues: readonly ImportIssue[],
): Readings {
  const units = new Map<string, ExportUnit>();
  for (const [{ header, fileStems }, unit] of written) {
    for (const stem of fileStems) units.set(`${stem}:${header}`, unit);
  }
  const unitOf = (column: ReadingColumn): ExportUnit | null =>
    column.unit ?? units.get(`${column.fileStem}:${headerOf(column)}`) ?? null;
  return {
    ...readings,
    columns: readings.columns.map((column) => ({ ...column, unit: unitOf(column) })),
    report: { ...readings.report, issues: [...readings.report.issues, ...issues] },
  };
}
