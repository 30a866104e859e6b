import type { ImportIssue } from '../../model/import-report.ts';
import { celsiusFrom } from '../../units/convert.ts';
import { quantityOf } from '../../units/export-units.ts';
import { collectPoints } from '../points/collect-points.ts';
import type { Readings } from '../readings.ts';
import type { SiteFile } from '../site-file/site-file.ts';
import { type GuessedCircuit, type GuessedCircuits, guessCircuits } from './guess-circuits.ts';
import { issuesOf } from './guess-issues.ts';
import type { GuessNote } from './guess-note.ts';
import { guessRacks } from './guess-racks.ts';
import { type GuessedUnits, guessUnits } from './guess-units.ts';
import { withRackSigns } from './rack-signs.ts';
import { withLoneMachines, withRackColumns } from './reclassify.ts';
import { type NamedColumn, nameColumns } from './role.ts';
import { unitNotes, unitQuestions, withUnits } from './unit-notes.ts';
import { type KnownZone, zoneNotes, zoneOf, zoneQuestions } from './zone-notes.ts';

/** A site file made from names, units and behaviour, with the grounds of each guess. */
export interface SiteGuess {
  readonly site: SiteFile;
  readonly notes: readonly GuessNote[];
  /** What is unsure, one sentence each, for the person who knows the store. */
  readonly questions: readonly string[];
  /** 0 to 1: that circuits and probes are right on the whole. */
  readonly confidence: number;
  readonly issues: readonly ImportIssue[];
}

/** Guesses what the columns of an export are; `known` is what the user says beforehand. */
export function guessSite(readings: Readings, known: SiteFile | null = null): SiteGuess {
  return guessFromColumns(nameColumns(collectPoints(readings).points), known, zoneOf(readings));
}

/** The same from named columns; `known` is a site file that names no circuits but perhaps units or the store. */
export function guessFromColumns(
  named: readonly NamedColumn[],
  known: SiteFile | null,
  zone: KnownZone,
): SiteGuess {
  const columns = withLoneMachines(withRackColumns(withRackSigns(named)));
  const circuits = guessCircuits(columns);
  const units = unitsOf(columns, circuits, known);
  const racks = guessRacks(columns, circuits.circuits, celsiusOf(circuits.circuits, units, known));
  const site: SiteFile = {
    ...known,
    timeZone: known?.timeZone ?? zone.timeZone,
    ...withUnits(units, known),
    ...(racks.racks.length > 0 ? { racks: [...racks.racks] } : {}),
    circuits: circuits.circuits.map(({ circuit: { id, ...rest } }) => {
      const group = racks.groupOf.get(id);
      return group === undefined ? { id, ...rest } : { id, suctionGroup: group, ...rest };
    }),
  };
  const notes = [...zoneNotes(zone), ...unitNotes(units), ...racks.notes, ...circuits.notes];
  const questions = [
    ...zoneQuestions(zone),
    ...unitQuestions(units),
    ...circuits.questions,
    ...racks.questions,
  ];
  const { confidence } = circuits;
  return { site, notes, questions, confidence, issues: issuesOf(site, notes, questions, confidence) };
}

function unitsOf(
  columns: readonly NamedColumn[],
  circuits: GuessedCircuits,
  known: SiteFile | null,
): GuessedUnits {
  const silent = columns.filter(({ point, kind }) => point.unit === null && kind !== 'status');
  const air = new Set(circuits.circuits.flatMap(({ group }) => group.air.map((probe) => probe.column)));
  const stated = columns.flatMap(({ point }) => point.unit ?? []);
  return guessUnits(
    silent.filter((column) => air.has(column)),
    silent.filter(({ kind }) => kind === 'pressure'),
    stated,
    known?.units,
  );
}

function celsiusOf(
  circuits: readonly GuessedCircuit[],
  units: GuessedUnits,
  known: SiteFile | null,
): Map<string, number> {
  const assumed = known?.units?.temperature ?? units.temperature?.unit ?? 'degC';
  return new Map(
    circuits.map(({ circuit, group, medianAir }) => {
      const unit = group.air[0]!.column.point.unit ?? assumed;
      return [
        circuit.id,
        celsiusFrom(medianAir, quantityOf(unit) === 'temperature' ? unit : assumed),
      ] as const;
    }),
  );
}
