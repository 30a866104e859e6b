import type { Lead } from '../../alarm-replay/lead.ts';
import type { HiddenByAverage } from '../../alarm-replay/why-hidden.ts';
import {
  alarmView,
  type CircuitAlarms,
  type FindingLead,
  type ReplayedAlarm,
} from '../../audit/alarm-view.ts';
import { type MonthScope, touches } from '../../audit/scope.ts';
import { toldOn } from '../../audit/told-on.ts';
import type { Finding } from '../../model/finding.ts';
import type { Log } from '../../model/log.ts';
import { formatMinutes, formatTemperature } from '../../units/display.ts';
import type { EpochMs } from '../../units/quantities.ts';
import { dayAndTimeText, dayText } from '../local-time.ts';

/** What a paragraph is about, and what is said of it line by line. */
export interface AlarmParagraph {
  readonly title: string;
  readonly lines: readonly string[];
}

/** One paragraph for each finding of a warm circuit; one for the trips that no finding stands behind. */
export function alarmParagraphs(scope: MonthScope): AlarmParagraph[] {
  const view = alarmView(scope);
  const stray = view.flatMap((circuit) => strayTrips(circuit, scope));
  return [
    ...view.flatMap((circuit) =>
      circuit.findings.map((finding) => findingParagraph(circuit, finding, scope)),
    ),
    ...(stray.length === 0 ? [] : [{ title: 'With no finding behind it', lines: stray }]),
  ];
}

/** `the alarm in force (average above 44.0 °F for 60 minutes)`. */
export function alarmTitle({ name, history: { rule } }: ReplayedAlarm, log: Log): string {
  const which = {
    'in force': 'the alarm in force',
    'common practice': 'a usual alarm',
    suggested: 'a suggested alarm',
  };
  const title = name === 'same, on the warmest' ? 'the same on the warmest probe' : which[name];
  const listens = typeof rule.input === 'string' ? rule.input : rule.input.probe;
  return `${title} (${listens} above ${formatTemperature(rule.limit, log.units)} for ${formatMinutes(rule.delayMinutes)})`;
}

/** Against the onset, which is known with hindsight alone. */
export function leadText(lead: Lead, log: Log): string {
  if (lead.order === 'never') return `never came in the ${lengthText(lead.days)} since the onset`;
  const days = lengthText(lead.days);
  const when = dayAndTimeText(log, lead.trip);
  return lead.order === 'alarm-first'
    ? `was first: it came ${days} before the onset seen with hindsight, on ${when}`
    : `came ${days} after the onset seen with hindsight, on ${when}`;
}

/** `could have been told at the end of Tue 15 Sep, 4.5 days after its onset`. */
export function toldText(told: EpochMs | null, { onset }: Finding, log: Log): string {
  if (told === null) {
    return 'could not have been told by its own analysis alone; it rests on what others saw as well';
  }
  return `could have been told at the end of ${dayText(log, told - 1)}, ${lengthText((told - onset) / dayMs)} after its onset`;
}

/** The trip against the day on which the finding could have been told; empty where one of the two is missing. */
export function leadFromTold({ trip }: Lead, told: EpochMs | null): string {
  if (trip === null || told === null) return '';
  const days = (trip - told) / dayMs;
  return `${lengthText(days)} ${days < 0 ? 'before' : 'after'} it could be told`;
}

const dayMs = 86_400_000;

/** `11 days`, `9 h 40 min`: the length without its sign. */
const lengthText = (days: number): string => formatMinutes(Math.round(Math.abs(days) * 1440));

/** One line why an average hid a warm probe. */
export function hiddenText(
  { probe, probeLevel, others, average, limit, date }: HiddenByAverage,
  log: Log,
): string {
  const show = (celsius: number) => formatTemperature(celsius, log.units);
  return `On ${date} ${probe} stood at ${show(probeLevel)}, the others at ${others.map(show).join(' and ')}: an average of ${show(average)}, under the limit of ${show(limit)}, is all that the alarm saw.`;
}

/** `M01 air A, since Tue 8 Sep, 12:00`. */
export function findingTitle({ finding }: Pick<FindingLead, 'finding'>, log: Log): string {
  return `${finding.probe ?? finding.circuit}, since ${dayAndTimeText(log, finding.onset)}`;
}

function findingParagraph(
  { alarms }: CircuitAlarms,
  { finding, leads, hidden }: FindingLead,
  scope: MonthScope,
): AlarmParagraph {
  const { log } = scope;
  const title = findingTitle({ finding }, log);
  const [current] = alarms;
  if (current === undefined) return { title, lines: [capital(nothingToReplay)] };
  const told = toldOn(finding, scope);
  const said = leads.map(({ alarm, lead }) => {
    const fromTold = leadFromTold(lead, told);
    return `${capital(alarmTitle(alarm, log))} ${leadText(lead, log)}${fromTold === '' ? '' : `, ${fromTold}`}.`;
  });
  return {
    title,
    lines: [
      `It ${toldText(told, finding, log)}.`,
      ...said,
      `The first is blind for ${formatMinutes(current.history.blindMinutesADay)} a day.`,
      ...(hidden === null ? [] : [hiddenText(hidden, log)]),
    ],
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Which onset the days count from, and why the other day stands beside it. */
export const hindsight =
  'Days count from the onset that the whole history shows: it is known with hindsight, and nobody could have told the finding then. Beside it stands the day on which it could have been told: the first at whose end its own analysis gives it, from what was logged up to then.';

export const nothingToReplay = 'no set point and no limit are known, so no alarm can be replayed.';

export function strayTrips({ circuit, alarms, findings }: CircuitAlarms, scope: MonthScope): string[] {
  const [current] = alarms;
  if (current === undefined || findings.length > 0) return [];
  const count = current.history.trips.filter(({ from, to }) =>
    touches(scope, from, to ?? scope.log.grid.count),
  ).length;
  if (count === 0) return [];
  const times = count === 1 ? 'once' : `${count} times`;
  return [
    `${circuit.circuit.id}: ${alarmTitle(current, scope.log)} came ${times}, with no finding behind it.`,
  ];
}
