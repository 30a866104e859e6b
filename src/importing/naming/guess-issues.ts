import type { ImportIssue } from '../../model/import-report.ts';
import type { SiteFile } from '../site-file/site-file.ts';
import { type GuessNote, sureEnough } from './guess-note.ts';
import { counted } from './some-names.ts';

/** What the import report says of a guess. */
export function issuesOf(
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
