import type { ImportIssue, ImportReport } from '../model/import-report.ts';
import type { Log } from '../model/log.ts';
import { atmosphereAtAltitude } from '../units/atmosphere.ts';
import { calendarOf } from './assembling/calendar.ts';
import { chooseGrid } from './assembling/choose-grid.ts';
import { instantFrom } from './assembling/cut-times.ts';
import { meaningOf } from './assembling/meaning.ts';
import { placePoints } from './assembling/place-points.ts';
import { RecordShelf } from './assembling/record-shelf.ts';
import { renamedPoints } from './assembling/renamed-points.ts';
import { SiteBuilder } from './assembling/site-builder.ts';
import { siteUnits } from './assembling/site-units.ts';
import { usableCircuits } from './assembling/usable-site.ts';
import { guessFromColumns, type SiteGuess } from './naming/guess-site.ts';
import { nameColumns } from './naming/role.ts';
import { zoneOf } from './naming/zone-notes.ts';
import { collectPoints } from './points/collect-points.ts';
import type { Readings } from './readings.ts';
import type { SiteFile } from './site-file/site-file.ts';

export interface AssembleOptions {
  /** RFC 3339, or wall-clock time of the site. */
  readonly from?: string;
  /** The same; a bare date counts to its end. */
  readonly to?: string;
}

export interface Assembled {
  readonly log: Log;
  readonly report: ImportReport;
  /** What was guessed, where the site file names no circuits; null with a full site file. */
  readonly guess: SiteGuess | null;
}

/**
 * Readings and what the site file says of them, as one aligned Log in inside units.
 *
 * The readings are taken over: arrays that already stand on the grid are converted in place and become the
 * records, so the readings are not to be used afterwards. Throws ImportRefusal where nothing can be made of them.
 */
export function assembleLog(
  readings: Readings,
  site: SiteFile | null,
  options: AssembleOptions = {},
): Assembled {
  const { points, issues } = collectPoints(readings);
  const described = site?.circuits !== undefined || site?.racks !== undefined;
  const renamed = renamedPoints(points);
  const columns = nameColumns(points);
  const guess = described ? null : guessFromColumns(columns, site, zoneOf(readings));
  const inForce: SiteFile = guess?.site ?? site ?? {};
  const placed = placePoints(points, inForce);
  const usable = usableCircuits(inForce, placed, guess !== null);
  const units = siteUnits(columns, placed, site);
  const atmosphere = atmosphereAtAltitude(inForce.altitude ?? 0);

  const { timeZone } = readings;
  const grid = chooseGrid(points, {
    fromMs: options.from === undefined ? null : instantFrom(options.from, timeZone, '--from'),
    toMs: options.to === undefined ? null : instantFrom(options.to, timeZone, '--to', true),
  });
  const shelf = new RecordShelf(points, grid, atmosphere);
  const builder = new SiteBuilder(placed, shelf, units.inForce, units.display, atmosphere);
  const log: Log = {
    site: inForce.site ?? '',
    units: units.display,
    atmosphere,
    grid,
    calendar: calendarOf(grid, timeZone),
    suctionGroups: (inForce.racks ?? []).flatMap((rack) =>
      (rack.suctionGroups ?? []).map((group) => builder.suctionGroup(group, rack)),
    ),
    circuits: usable.circuits.map((circuit) => builder.circuit(circuit)),
    unassigned: points
      .filter((point) => !shelf.has(point))
      .map((point) => shelf.recordOf(point, meaningOf(point, 'any', units.inForce))),
  };
  const noticed: ImportIssue[] = [
    ...readings.report.issues,
    ...issues,
    ...(guess?.issues ?? []),
    ...placed.issues,
    ...usable.issues,
    ...units.issues,
    ...renamed,
  ];
  return { log, report: { ...readings.report, issues: noticed }, guess };
}
