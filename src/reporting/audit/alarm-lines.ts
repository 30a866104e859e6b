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
import { formatDays, formatMinutes, formatTemperature } from '../../units/display.ts';
import type { EpochMs } from '../../units/quantities.ts';
import { dayAndTimeText, dayText } from '../local-time.ts';

/** One paragraph for each finding of a warm circuit; one line for the trips that no finding stands behind. */
export function alarmLines(scope: MonthScope): string[] {
  return alarmView(scope).flatMap((circuit) => [
    ...circuit.findings.map((finding) => findingText(circuit, finding, scope)),
    ...strayTrips(circuit, scope),
  ]);
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
  if (lead.order === 'never') return `never came in the ${formatDays(lead.days)} since the onset`;
  const days = formatDays(Math.abs(lead.days));
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
  return `could have been told at the end of ${dayText(log, told - 1)}, ${formatDays((told - onset) / dayMs)} after its onset`;
}

/** The trip against the day on which the finding could have been told; empty where one of the two is missing. */
export function leadFromTold({ trip }: Lead, told: EpochMs | null): string {
  if (trip === null || told === null) return '';
  const days = (trip - told) / dayMs;
  return `${formatDays(Math.abs(days))} ${days < 0 ? 'before' : 'after'} that`;
}

const dayMs = 86_400_000;

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

function findingText({ alarms }: CircuitAlarms, finding: FindingLead, scope: MonthScope): string {
  const { log } = scope;
  const [current] = alarms;
  const told = toldOn(finding.finding, scope);
  const title = findingTitle(finding, log);
  if (current === undefined) return `${title}: ${nothingToReplay}`;
  const said = finding.leads.map(({ alarm, lead }) => {
    const fromTold = leadFromTold(lead, told);
    return `${alarmTitle(alarm, log)} ${leadText(lead, log)}${fromTold === '' ? '' : ` (${fromTold})`}`;
  });
  const blind = `The first is blind for ${formatMinutes(current.history.blindMinutesADay)} a day.`;
  const why = finding.hidden === null ? '' : ` ${hiddenText(finding.hidden, log)}`;
  return `${title}: it ${toldText(told, finding.finding, log)}. ${capital(said.join('; '))}. ${blind}${why}`;
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
