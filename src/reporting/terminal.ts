import type { Diagnosis, Finding } from '../model/finding.ts';
import type { ImportReport } from '../model/import-report.ts';
import type { Log } from '../model/log.ts';
import { airNotFood } from './air-not-food.ts';
import { cautionsDefer, cautionsFor } from './cautions.ts';
import { headline, restsOn, siteTitle } from './headline.ts';
import { importLines } from './import-lines.ts';
import { openQuestions, placesText } from './open-questions.ts';
import { placeTitle, reportOrder, summaryUnder } from './report-order.ts';
import { findingBlock } from './terminal/finding-block.ts';
import { type Paint, severityBadge } from './terminal/paint.ts';
import { hang, indented } from './terminal/wrap.ts';
import { visibleText } from './visible-text.ts';

export { paintFor } from './terminal/paint.ts';

interface Analysed {
  readonly log: Log;
  readonly report: ImportReport;
  readonly diagnosis: Diagnosis;
}

const mostIssuesShown = 6;

/** The ranked list for a person at a terminal, ending in a newline. */
export function terminalReport({ log, report, diagnosis }: Analysed, paint: Paint): string {
  const order = reportOrder(diagnosis, log);
  const sections = [
    headingLines(siteTitle(log, report), log, headline(order, diagnosis, log), paint),
    ...order.places.map((place, index) => {
      const badge = severityBadge(place.worst);
      const [lead, ...more] = place.findings;
      const title = `${index + 1}. ${paint.severity(place.worst, badge)}  ${paint.bold(visibleText(place.title))}`;
      const also = more.flatMap((finding) => [
        '',
        `    ${paint.dim('also')} ${paint.severity(finding.severity, severityBadge(finding.severity))}`,
        ...findingBlock(place, finding, log, paint),
      ]);
      return [title, ...findingBlock(place, lead!, log, paint), ...also];
    }),
    noteLines(order.notes, log, paint),
    questionLines(diagnosis, log, paint),
    importSection(report, paint),
    cautionLines(diagnosis, paint),
    indented(airNotFood, 0, paint.width),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

function headingLines(title: string, log: Log, sentence: string, paint: Paint): string[] {
  return [
    paint.bold(visibleText(title)),
    ...indented(restsOn(log), 0, paint.width),
    '',
    ...indented(sentence, 0, paint.width).map((line) => paint.bold(line)),
  ];
}

function noteLines(notes: Diagnosis['findings'], log: Log, paint: Paint): string[] {
  if (notes.length === 0) return [];
  const lines = notes.flatMap((note) => hang('○', visibleText(noteText(note, log)), 2, 2, paint.width));
  return [paint.bold('Notes, no visit needed'), ...lines];
}

function noteText(note: Finding, log: Log): string {
  const title = placeTitle(note, log);
  return `${title}: ${summaryUnder(title, note)}`;
}

function questionLines(diagnosis: Diagnosis, log: Log, paint: Paint): string[] {
  const questions = openQuestions(diagnosis, log);
  if (questions.length === 0) return [];
  const lines = questions.flatMap(({ reason, needs, places }) => {
    const where = places.length === 0 ? '' : `${placesText(places)}: `;
    const remedy = needs === null ? '' : ` What would allow it: ${needs}`;
    return hang('-', visibleText(`${where}${reason}${remedy}`), 2, 2, paint.width);
  });
  return [paint.bold('What this export cannot tell'), ...lines];
}

function importSection(report: ImportReport, paint: Paint): string[] {
  const lines = importLines(report).flatMap(({ heading, details }) => {
    const shown = details.slice(0, mostIssuesShown);
    const rest = details.length - shown.length;
    return [
      ...indented(visibleText(heading), 2, paint.width),
      ...shown.flatMap((detail) => hang('-', visibleText(detail), 4, 2, paint.width)),
      ...(rest > 0 ? indented(`and ${rest} more, all in --json`, 6, paint.width) : []),
    ];
  });
  return [paint.bold('What was read'), ...lines];
}

function cautionLines(diagnosis: Diagnosis, paint: Paint): string[] {
  const cautions = cautionsFor(diagnosis.findings);
  if (cautions.length === 0) return [];
  return [
    paint.bold('Take care'),
    ...indented(cautionsDefer, 2, paint.width),
    ...cautions.flatMap(({ hazard, advice }) => hang('-', `${hazard}. ${advice}`, 2, 2, paint.width)),
  ];
}
