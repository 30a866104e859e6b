import type { Diagnosis } from '../../model/finding.ts';
import type { ImportReport } from '../../model/import-report.ts';
import type { Log } from '../../model/log.ts';
import { formatMinutes, formatTemperature } from '../../units/display.ts';
import type { PhoneQuestion } from '../../visit/phone-first.ts';
import type { Stop, VisitSheet } from '../../visit/visit-sheet.ts';
import { confidenceText, paceText } from '../finding-facts.ts';
import { noCircuits, tooShortForDrift } from '../headline.ts';
import { limitName } from '../limit-words.ts';
import { dayText } from '../local-time.ts';
import { placesText } from '../open-questions.ts';
import { placeTitle, summaryUnder } from '../report-order.ts';
import { causeWords } from '../words.ts';

/** What a sheet was made from. */
export interface SheetSource {
  readonly log: Log;
  readonly report: ImportReport;
  readonly diagnosis: Diagnosis;
}

/** What leads here, under the name of the place: it need not say that again. */
export const stopSummary = (stop: Stop, log: Log): string => summaryUnder(stopTitle(stop, log), stop.lead);

export const stopTitle = (stop: Stop, log: Log): string => placeTitle(stop.lead, log);

/** `since Fri 11 Sep · 0.41 °F a day · high, 93 %`. */
export function stopFacts({ lead }: Stop, log: Log): string {
  const pace = paceText(lead, log);
  return [
    `since ${dayText(log, lead.onset)}`,
    ...(pace === null ? [] : [pace]),
    `confidence ${confidenceText(lead.confidence)}`,
  ].join(' · ');
}

/** What the air is like now at the worst place, and which others it holds for; null where all stayed under their limits. */
export function exposureText({ exposures }: Stop, log: Log): string | null {
  const [worst, ...others] = exposures.filter(({ aboveMinutes }) => aboveMinutes > 0);
  if (worst === undefined) return null;
  const { point, aboveMinutes, limit } = worst;
  const air = `Air at ${point} was above ${formatTemperature(limit.value, log.units)} (${limitName(limit)}) for ${formatMinutes(aboveMinutes)} of the last day, defrosts left out.`;
  if (others.length === 0) return air;
  const places = others.map(({ circuit }) => circuit);
  return `${air} So was air of ${placesText(places, 8)}, each above its own limit.`;
}

export function causeText({ cause }: Stop): string | null {
  return cause === null ? null : `${causeWords[cause.cause]} (${Math.round(cause.likelihood * 100)} %)`;
}

/** A question for the phone, or for whoever can see the controller. */
export function questionText(question: PhoneQuestion, log: Log): string {
  if (question.about === 'thermometer') {
    const [first, ...more] = question.probes;
    const probes = more.length === 0 ? first : `each of ${placesText(question.probes, 8)}`;
    return `Ask somebody to hang a thermometer in the air beside ${probes} for ten minutes: does it agree with the probe?`;
  }
  if (question.about === 'goods') {
    const air =
      question.circuits.length === 1 ? 'The air was above its limit' : 'Their air was above its limits';
    return `${placesText(question.circuits, 12)}: ask the store to check the goods now with a calibrated thermometer, by its own plan. ${air} in the last day.`;
  }
  const since = dayText(log, question.since);
  switch (question.about) {
    case 'switched-off':
      return `${question.circuit}: was it switched off on purpose, ${since}? For cleaning, or by a visit? Who may switch it on again?`;
    case 'held-open':
      return `${question.circuit}: is an override set, since ${since}? Who set it, and can it be released?`;
    case 'defrost-schedule':
      return `${question.circuit}: what does the defrost schedule say, and was it changed or switched off about ${since}?`;
    case 'doors-and-load':
      return `${question.circuit}: doors, curtains, stocking, a promotion since ${since}? Is anything on the return grille?`;
    case 'set-point':
      return `${question.circuit}: the set point went from ${formatTemperature(question.from, log.units)} to ${formatTemperature(question.to, log.units)} on ${since}. Was that meant?`;
    case 'compressors':
      return `${question.suctionGroup}: does an alarm stand at the rack, is a compressor locked out or off, was the suction set point changed about ${since}?`;
  }
}

export function visitHeadline(
  { stops, phoneFirst }: VisitSheet,
  { log, diagnosis }: Pick<SheetSource, 'log' | 'diagnosis'>,
): string {
  if (stops.length === 0 && log.circuits.length === 0) return noCircuits;
  if (stops.length === 0) {
    const short = tooShortForDrift(diagnosis, log);
    return short === null
      ? 'No stop is needed: nothing here is above a note.'
      : `${short} Nothing of that stands above a note.`;
  }
  const calls =
    phoneFirst.length === 0
      ? ''
      : `; ${phoneFirst.length === 1 ? 'one question' : `${phoneFirst.length} questions`} for the phone first`;
  return `${stops.length === 1 ? 'One stop' : `${stops.length} stops, worst first`}${calls}.`;
}
