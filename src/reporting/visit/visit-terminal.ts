import type { Diagnosis } from '../../model/finding.ts';
import type { Log } from '../../model/log.ts';
import type { Stop, VisitSheet } from '../../visit/visit-sheet.ts';
import { airNotFood } from '../air-not-food.ts';
import { cautionsDefer, cautionsFor } from '../cautions.ts';
import { restsOn, siteTitle } from '../headline.ts';
import { openQuestions, placesText } from '../open-questions.ts';
import { type Paint, severityBadge } from '../terminal/paint.ts';
import { hang, indented } from '../terminal/wrap.ts';
import { visibleText } from '../visible-text.ts';
import {
  causeText,
  exposureText,
  questionText,
  type SheetSource,
  stopFacts,
  stopSummary,
  stopTitle,
  visitHeadline,
} from './visit-words.ts';

const mostOpenQuestions = 4;

/** The sheet for a technician at a terminal. */
export function visitReport(
  sheet: VisitSheet,
  { log, report, diagnosis }: SheetSource,
  paint: Paint,
): string {
  const list = (title: string, lines: readonly string[]): string[] =>
    lines.length === 0
      ? []
      : [paint.bold(title), ...lines.flatMap((line) => hang('-', visibleText(line), 2, 2, paint.width))];
  const cautions = cautionsFor(sheet.findings);
  const sections = [
    [paint.bold(visibleText(siteTitle(log, report))), ...indented(restsOn(log), 0, paint.width)],
    indented(visitHeadline(sheet, { log, diagnosis }), 0, paint.width).map((line) => paint.bold(line)),
    list(
      'By phone first',
      sheet.phoneFirst.map((question) => questionText(question, log)),
    ),
    ...sheet.stops.map((stop, index) => stopLines(stop, index, log, paint)),
    list('What this export cannot tell', cannotTell(diagnosis, log)),
    list(
      'Take care',
      cautions.length === 0
        ? []
        : [cautionsDefer, ...cautions.map(({ hazard, advice }) => `${hazard}. ${advice}`)],
    ),
    indented(airNotFood, 0, paint.width),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

/** What stays open, and which column would settle it. */
export function cannotTell(diagnosis: Diagnosis, log: Log): string[] {
  const questions = openQuestions(diagnosis, log);
  const shown = questions.slice(0, mostOpenQuestions).map(({ reason, needs, places }) => {
    const where = places.length === 0 ? '' : `${placesText(places)}: `;
    return `${where}${reason}${needs === null ? '' : ` What would allow it: ${needs}`}`;
  });
  const rest = questions.length - shown.length;
  return rest > 0 ? [...shown, `And ${rest} more, in rimelog check.`] : shown;
}

function stopLines(stop: Stop, index: number, log: Log, paint: Paint): string[] {
  const row = (label: string, text: string | null): string[] =>
    text === null
      ? []
      : hang(label, visibleText(text), 4, 11, paint.width).map((line, k) =>
          k === 0 ? line.replace(label, paint.dim(label)) : line,
        );
  const badge = paint.severity(stop.severity, severityBadge(stop.severity));
  return [
    `${index + 1}. ${badge}  ${paint.bold(visibleText(stopTitle(stop, log)))}`,
    ...indented(visibleText(stopSummary(stop, log)), 4, paint.width),
    ...indented(visibleText(stopFacts(stop, log)), 4, paint.width),
    ...row('now', exposureText(stop, log)),
    ...row('probably', causeText(stop)),
    ...(stop.cause?.checkFirst.slice(0, 3) ?? []).flatMap((check, k) =>
      row(k === 0 ? 'check' : '', `${k + 1}. ${check}`),
    ),
    ...row(
      'bring',
      stop.cause === null || stop.cause.bring.length === 0 ? null : stop.cause.bring.join(', '),
    ),
    ...stop.others.flatMap(({ summary }) => row('also', summary)),
  ];
}
