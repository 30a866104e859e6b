import type { Lead } from '../../alarm-replay/lead.ts';
import type { HiddenByAverage } from '../../alarm-replay/why-hidden.ts';
import {
  alarmView,
  type CircuitAlarms,
  type FindingLead,
  type ReplayedAlarm,
} from '../../audit/alarm-view.ts';
import { type MonthScope, touches } from '../../audit/scope.ts';
import type { Log } from '../../model/log.ts';
import { formatDays, formatMinutes, formatTemperature } from '../../units/display.ts';
import { dayAndTimeText } from '../local-time.ts';

/** One paragraph for each finding of a warm circuit; one line for the trips that no finding stands behind. */
export function alarmLines(scope: MonthScope): string[] {
  return alarmView(scope).flatMap((circuit) => [
    ...circuit.findings.map((finding) => findingText(circuit, finding, scope.log)),
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

export function leadText(lead: Lead, log: Log): string {
  if (lead.order === 'never') return `never came in the ${formatDays(lead.days)} of it`;
  const days = formatDays(Math.abs(lead.days));
  const when = dayAndTimeText(log, lead.trip);
  return lead.order === 'alarm-first'
    ? `was first: it came ${days} before the onset, on ${when}`
    : `came ${days} after the onset, on ${when}`;
}

/** One line why an average hid a warm probe. */
export function hiddenText(
  { probe, probeLevel, others, average, limit, date }: HiddenByAverage,
  log: Log,
): string {
  const show = (celsius: number) => formatTemperature(celsius, log.units);
  return `On ${date} ${probe} stood at ${show(probeLevel)}, the others at ${others.map(show).join(' and ')}: an average of ${show(average)}, under the limit of ${show(limit)}, is all that the alarm saw.`;
}

/** `M01 air A, since Tue 8 Sep, 12:00`. */
export function findingTitle({ finding }: FindingLead, log: Log): string {
  return `${finding.probe ?? finding.circuit}, since ${dayAndTimeText(log, finding.onset)}`;
}

function findingText({ alarms }: CircuitAlarms, finding: FindingLead, log: Log): string {
  const [current] = alarms;
  const title = findingTitle(finding, log);
  if (current === undefined) return `${title}: ${nothingToReplay}`;
  const told = finding.leads.map(({ alarm, lead }) => `${alarmTitle(alarm, log)} ${leadText(lead, log)}`);
  const blind = `The first is blind for ${formatMinutes(current.history.blindMinutesADay)} a day.`;
  const why = finding.hidden === null ? '' : ` ${hiddenText(finding.hidden, log)}`;
  return `${title}: ${told.join('; ')}. ${blind}${why}`;
}

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
