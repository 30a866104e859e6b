import { cautionsDefer } from '../cautions.ts';
import { type Paint, severityBadge } from '../terminal/paint.ts';
import { hang, indented } from '../terminal/wrap.ts';
import { visibleText } from '../visible-text.ts';
import type { RoundDocument, RoundStop } from './round-document.ts';
import { newsOf, quietStores, stopFacts, unknownStores } from './round-words.ts';

/** The round for a terminal: stops of all stores worst first, then the quiet stores, then what is not known. */
export function roundReport(round: RoundDocument, paint: Paint): string {
  const list = (title: string, lines: readonly string[]): string[] =>
    lines.length === 0
      ? []
      : [paint.bold(title), ...lines.flatMap((line) => hang('-', visibleText(line), 2, 2, paint.width))];
  const sections = [
    indented(round.summary, 0, paint.width).map((line) => paint.bold(line)),
    ...round.stops.map((stop, index) => stopLines(stop, index, paint)),
    list('As of', newsOf(round)),
    list('Nothing above a note', quietStores(round)),
    list('Of these nothing is known', unknownStores(round)),
    indented(round.method, 0, paint.width),
    indented(`${cautionsDefer} ${round.notice}`, 0, paint.width),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

function stopLines(stop: RoundStop, index: number, paint: Paint): string[] {
  const badge = paint.severity(stop.severity, severityBadge(stop.severity));
  return [
    `${index + 1}. ${badge}  ${paint.bold(visibleText(`${stop.store}: ${stop.place}`))}`,
    ...indented(visibleText(stop.summary), 4, paint.width),
    ...stopFacts(stop).flatMap(({ label, text }) =>
      hang(label, visibleText(text), 4, 11, paint.width).map((line, k) =>
        k === 0 ? line.replace(label, paint.dim(label)) : line,
      ),
    ),
  ];
}
