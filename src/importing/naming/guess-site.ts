import type { ImportIssue } from '../../model/import-report.ts';
import { celsiusFrom } from '../../units/convert.ts';
import { quantityOf } from '../../units/export-units.ts';
import { collectPoints } from '../assembling/collect-points.ts';
import type { Readings } from '../readings.ts';
import type { SiteFile } from '../site-file/site-file.ts';
import { type GuessedCircuit, type GuessedCircuits, guessCircuits } from './guess-circuits.ts';
import { guessRacks } from './guess-racks.ts';
import { type GuessedUnits, guessUnits } from './guess-units.ts';
import { withRackPressures } from './reclassify.ts';
import { type NamedColumn, nameColumns } from './role.ts';

/** One thing that was guessed: where it stands in the site file, how sure it is, and why. */
export interface GuessNote {
  /** `circuits.M01.defrost.status` */
  readonly path: string;
  /** 0 to 1. */
  readonly confidence: number;
  readonly because: string;
}

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
  return guessFromColumns(nameColumns(collectPoints(readings).points), null);
}

/** The same from named columns; `known` is a site file that names no circuits but perhaps units or the store. */
export function guessFromColumns(named: readonly NamedColumn[], known: SiteFile | null): SiteGuess {
  const columns = withRackPressures(named);
  const circuits = guessCircuits(columns);
  const units = unitsOf(columns, circuits, known);
  const racks = guessRacks(columns, circuits.circuits, celsiusOf(circuits.circuits, units, known));
  const site: SiteFile = {
    ...known,
    ...withUnits(units, known),
    ...(racks.racks.length > 0 ? { racks: [...racks.racks] } : {}),
    circuits: circuits.circuits.map(({ circuit: { id, ...rest } }) => {
      const group = racks.groupOf.get(id);
      return group === undefined ? { id, ...rest } : { id, suctionGroup: group, ...rest };
    }),
  };
  const notes = [...unitNotes(units), ...racks.notes, ...circuits.notes];
  const questions = [...unitQuestions(units), ...circuits.questions, ...racks.questions];
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

function withUnits({ temperature, pressure }: GuessedUnits, known: SiteFile | null): Pick<SiteFile, 'units'> {
  const units = {
    ...known?.units,
    ...(temperature === null ? {} : { temperature: temperature.unit }),
    ...(pressure === null ? {} : { pressure: pressure.unit }),
  };
  return Object.keys(units).length === 0 ? {} : { units };
}

function unitNotes({ temperature, pressure }: GuessedUnits): GuessNote[] {
  const note = (path: string, guess: { confidence: number; because: string } | null): GuessNote[] =>
    guess === null ? [] : [{ path, confidence: guess.confidence, because: guess.because }];
  return [...note('units.temperature', temperature), ...note('units.pressure', pressure)];
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
  const issues: ImportIssue[] = [
    {
      code: 'circuits-guessed',
      line: null,
      column: null,
      count: circuits.length,
      message: `Without a site file ${circuits.length} circuits with ${probes} probes were guessed from names, units and behaviour (sureness ${confidence.toFixed(2)}). Look them over with rimelog draft-site, correct the file and give it as --site.`,
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
