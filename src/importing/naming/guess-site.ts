import type { ImportIssue } from '../../model/import-report.ts';
import { collectPoints } from '../assembling/collect-points.ts';
import type { Point } from '../assembling/point.ts';
import type { Readings } from '../readings.ts';
import type { SiteFile } from '../site-file/site-file.ts';
import { guessCircuits } from './guess-circuits.ts';
import { guessRacks } from './guess-racks.ts';
import { nameColumn } from './role.ts';

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
  return guessFromPoints(collectPoints(readings).points, null);
}

/** The same from collected points; `known` is a site file that names no circuits but perhaps units or the store. */
export function guessFromPoints(points: readonly Point[], known: SiteFile | null): SiteGuess {
  const columns = points.map(nameColumn);
  const circuits = guessCircuits(columns);
  const racks = guessRacks(columns, circuits.circuits);
  const site: SiteFile = {
    ...known,
    ...(racks.racks.length > 0 ? { racks: [...racks.racks] } : {}),
    circuits: circuits.circuits.map(({ circuit }) => {
      const group = racks.groupOf.get(circuit.id);
      if (group === undefined) return circuit;
      const { id, name, ...rest } = circuit;
      return { id, ...(name === undefined ? {} : { name }), suctionGroup: group, ...rest };
    }),
  };
  const notes = [...racks.notes, ...circuits.notes];
  const questions = [...circuits.questions, ...racks.questions];
  const confidence = circuits.confidence;
  return { site, notes, questions, confidence, issues: issuesOf(site, notes, questions, confidence) };
}

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
  const unsure = notes.filter((note) => note.confidence < 0.7);
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
