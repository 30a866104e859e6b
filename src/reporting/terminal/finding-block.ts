import type { Finding, RankedCause } from '../../model/finding.ts';
import type { Log } from '../../model/log.ts';
import { findingFacts } from '../finding-facts.ts';
import { type Place, repeatsCause, summaryUnder } from '../report-order.ts';
import { visibleText } from '../visible-text.ts';
import { causeWords, originWords } from '../words.ts';
import type { Paint } from './paint.ts';
import { hang, indented } from './wrap.ts';

const bodyIndent = 4;
const labelWidth = 11;

function causeText({ cause, likelihood, because }: RankedCause): string {
  const share = `${causeWords[cause]} (${Math.round(likelihood * 100)} %)`;
  return because === '' ? share : `${share}: ${because}`;
}

/** What was found, since when, how fast, how sure, why, and what to do first. */
export function findingBlock(place: Place, finding: Finding, log: Log, paint: Paint): string[] {
  const lead = place.findings[0]!;
  const row = (label: string, text: string): string[] =>
    hang(label, visibleText(text), bodyIndent, labelWidth, paint.width).map((line, index) =>
      index === 0 ? line.replace(label, paint.dim(label)) : line,
    );
  const lines = indented(visibleText(summaryUnder(place.title, finding)), bodyIndent, paint.width);
  for (const { label, text } of findingFacts(finding, log)) lines.push(...row(label, text));
  lines.push(...row('it is', originWords[finding.origin]));

  if (repeatsCause(finding, lead))
    lines.push(...row('probably', `the same: ${causeWords[lead.causes[0]!.cause]}`));
  else lines.push(...causeRows(finding.causes, row));
  if (finding.wouldDecide !== null) lines.push(...row('to decide', finding.wouldDecide));
  if (finding.covers.length > 0) lines.push(...row('covers', finding.covers.join(', ')));
  return lines;
}

function causeRows(
  [first, ...others]: readonly RankedCause[],
  row: (label: string, text: string) => readonly string[],
): string[] {
  if (first === undefined) return [];
  const lines = [...row('probably', causeText(first))];
  if (others.length > 0) lines.push(...row('or else', others.slice(0, 2).map(shortCause).join(', ')));
  first.checkFirst.slice(0, 3).forEach((check, index) => {
    lines.push(...row(index === 0 ? 'check' : '', `${index + 1}. ${check}`));
  });
  if (first.bring.length > 0) lines.push(...row('bring', first.bring.join(', ')));
  return lines;
}

function shortCause({ cause, likelihood }: RankedCause): string {
  return `${causeWords[cause]} (${Math.round(likelihood * 100)} %)`;
}
