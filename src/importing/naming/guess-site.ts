import type { ImportIssue, ImportReport } from '../../model/import-report.ts';
import { celsiusFrom } from '../../units/convert.ts';
import { quantityOf } from '../../units/export-units.ts';
import { collectPoints } from '../points/collect-points.ts';
import type { Readings } from '../readings.ts';
import type { SiteFile } from '../site-file/site-file.ts';
import { type GuessedCircuit, type GuessedCircuits, guessCircuits } from './guess-circuits.ts';
import type { GuessNote } from './guess-note.ts';
import { guessRacks } from './guess-racks.ts';
import { type GuessedUnits, guessUnits } from './guess-units.ts';
import { withLoneMachines, withRackColumns } from './reclassify.ts';
import { type NamedColumn, nameColumns } from './role.ts';
import { counted } from './some-names.ts';

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

/** Guesses what the columns of an export are. */
export function guessSite(readings: Readings): SiteGuess {
  return guessFromColumns(nameColumns(collectPoints(readings).points), null, zoneOf(readings));
}

/** The same from named columns; `known` is a site file that names no circuits but perhaps units or the store. */
export function guessFromColumns(
  named: readonly NamedColumn[],
  known: SiteFile | null,
  zone: KnownZone,
): SiteGuess {
  const columns = withLoneMachines(withRackColumns(named));
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

/** The zone in which the readings were placed, and who said so. */
export type KnownZone = Pick<ImportReport, 'timeZone' | 'timeZoneSource'>;

export function zoneOf({ timeZone, report }: Readings): KnownZone {
  return { timeZone, timeZoneSource: report.timeZoneSource };
}

function zoneNotes({ timeZoneSource }: KnownZone): GuessNote[] {
  if (timeZoneSource === 'site') return [];
  const [confidence, because] = {
    option: [0.95, 'given with --time-zone'] as const,
    machine: [0.4, 'the zone of this machine, since the export says none'] as const,
    'offsets-in-export': [0.7, 'by the offsets in the export'] as const,
  }[timeZoneSource];
  return [{ path: ['timeZone'], confidence, because }];
}

function zoneQuestions({ timeZone, timeZoneSource }: KnownZone): string[] {
  if (timeZoneSource !== 'machine') return [];
  return [`In which time zone does the store stand? ${timeZone}, that of this machine, was taken.`];
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

function withUnits({ temperature, pressure }: GuessedUnits, known: SiteFile | null): Pick<SiteFile, 'units'> {
  const units = {
    ...known?.units,
    ...(temperature === null ? {} : { temperature: temperature.unit }),
    ...(pressure === null ? {} : { pressure: pressure.unit }),
  };
  return Object.keys(units).length === 0 ? {} : { units };
}

function unitNotes({ temperature, pressure }: GuessedUnits): GuessNote[] {
  const note = (key: string, guess: { confidence: number; because: string } | null): GuessNote[] =>
    guess === null ? [] : [{ path: ['units', key], confidence: guess.confidence, because: guess.because }];
  return [...note('temperature', temperature), ...note('pressure', pressure)];
}

function unitQuestions({ temperature, pressure }: GuessedUnits): string[] {
  const questions: string[] = [];
  if (temperature !== null && temperature.confidence < sureEnough)
    questions.push('Are the temperatures in °F or in °C?');
  if (pressure !== null && pressure.confidence < sureEnough) {
    questions.push('In which unit are the pressures: psig, barg, bar or kPa?');
  }
  return questions;
}

/** Below this a guess is asked for. */
const sureEnough = 0.75;

function issuesOf(
  site: SiteFile,
  notes: readonly GuessNote[],
  questions: readonly string[],
  confidence: number,
): ImportIssue[] {
  const circuits = site.circuits ?? [];
  const probes = circuits.reduce((sum, circuit) => sum + circuit.probes.length, 0);
  const groups = (site.racks ?? []).flatMap((rack) => rack.suctionGroups ?? []);
  if (circuits.length === 0 && groups.length === 0) return [nothingRecognised];
  const issues: ImportIssue[] = [
    {
      code: 'circuits-guessed',
      line: null,
      column: null,
      count: circuits.length,
      message: `Without a site file ${counted(circuits.length, 'circuit')} with ${counted(probes, 'probe')} and ${counted(groups.length, 'suction group')} were guessed from names, units and behaviour (sureness ${confidence.toFixed(2)}). Look them over with rimelog draft-site, correct the file and give it as --site.`,
      examples: circuits.slice(0, 3).map(({ id, probes: names }) => `${id}: ${names.join(', ')}`),
    },
  ];
  const unsure = notes.filter((note) => note.confidence < sureEnough);
  if (questions.length > 0) {
    issues.push({
      code: 'guess-unsure',
      line: null,
      column: null,
      count: Math.max(questions.length, unsure.length),
      message: `Not sure: ${questions.slice(0, 3).join(' ')}`,
      examples: questions.slice(0, 3),
    });
  }
  return issues;
}

const nothingRecognised: ImportIssue = {
  code: 'nothing-recognised',
  line: null,
  column: null,
  count: 1,
  message:
    'No column looks like the air of a case or a part of a rack, so nothing can be judged. Name the points in a site file (rimelog draft-site writes a start).',
};
