import type { Finding, Projection } from '../model/finding.ts';
import type { Log } from '../model/log.ts';
import { formatDays, formatMinutes, formatPressure, formatTemperature } from '../units/display.ts';
import { displayMeasure } from './display-measure.ts';
import { dayAndTimeText, dayText, endOf } from './local-time.ts';

/** One line of what is known about a finding, ready for a person. */
export interface Fact {
  readonly label: 'since' | 'how fast' | 'to limit' | 'how sure' | 'origin';
  readonly text: string;
}

const millisecondsPerDay = 86_400_000;

function sinceText(finding: Finding, log: Log): string {
  const start = dayAndTimeText(log, finding.onset);
  const lasted = lastedText((finding.end ?? endOf(log)) - finding.onset);
  if (finding.end === null) return `${start} (${lasted}, still so at the end of the export)`;
  return `${start} until ${dayAndTimeText(log, finding.end)} (${lasted})`;
}

function lastedText(milliseconds: number): string {
  const days = milliseconds / millisecondsPerDay;
  return days < 2 ? formatMinutes(milliseconds / 60_000) : formatDays(Math.round(days));
}

/**
 * `0.41 °F a day (0.33 to 0.49)`: how fast it goes on, named where the finding is not of the air; null for what does
 * not go on, as trips that are counted by the day.
 */
export function paceText({ kind, measures }: Finding, log: Log): string | null {
  const named = (wanted: string) => measures.find(({ name }) => name === wanted);
  const slope = named('slope');
  if (slope !== undefined) {
    const pace = displayMeasure(slope, log);
    return kind === 'upward-drift' ? pace : `its air warms by ${pace}`;
  }
  const lengthening = named('lengthening');
  return lengthening === undefined ? null : `its recovery grows by ${displayMeasure(lengthening, log)}`;
}

/** What leads it is dated to the hour: days of a rise that was also seen in it are those of the window. */
function cameAtOnce({ evidence }: Finding): boolean {
  const shape = evidence[0]?.shape;
  return shape === 'step' || shape === 'swapped';
}

/** `4 to 9 days`; with an open end, `4 days at the soonest, and it may never get there`; null where they do not tell more than the date. */
function daysBetween(from: number | null, to: number | null, end: number): string | null {
  if (from === null) return null;
  const early = Math.max(0, Math.round((from - end) / millisecondsPerDay));
  if (to === null) return `${formatDays(Math.max(1, early))} at the soonest, and it may never get there`;
  const late = Math.max(0, Math.round((to - end) / millisecondsPerDay));
  return early === late ? null : `${early} to ${late} days`;
}

/** `41.0 °F in about 6 days (4 to 9 days), counted from the end of the export`; null where nothing is projected. */
export function toLimitText(finding: Finding, log: Log): string | null {
  return finding.projection === null ? null : limitText(finding.projection, finding, log);
}

function limitText({ limit, at, earliest, latest, reason }: Projection, finding: Finding, log: Log): string {
  const value =
    finding.kind === 'rack-pressure'
      ? formatPressure(limit, log.units, log.atmosphere)
      : formatTemperature(limit, log.units);
  if (at === null) return `${value}: ${reason ?? 'no reliable date'}`;
  const end = endOf(log);
  if (at <= end) return `${value}, reached by ${dayText(log, at)}`;
  const days = (at - end) / millisecondsPerDay;
  const between = daysBetween(earliest, latest, end);
  const when = days < 1 ? 'within a day' : `in about ${formatDays(Math.round(days))}`;
  return `${value} ${when}${between === null ? '' : ` (${between})`}, counted from the end of the export`;
}

/** Confidence in words and as a number. */
export function confidenceText(confidence: number): string {
  const word = confidence >= 0.9 ? 'high' : confidence >= 0.7 ? 'medium' : 'low';
  return `${word}, ${Math.round(confidence * 100)} %`;
}

export function findingFacts(finding: Finding, log: Log): readonly Fact[] {
  const facts: Fact[] = [{ label: 'since', text: sinceText(finding, log) }];
  const pace = paceText(finding, log);
  if (pace !== null) facts.push({ label: 'how fast', text: pace });
  else if (!cameAtOnce(finding)) facts.push(...levelledOff(finding));
  const toLimit = toLimitText(finding, log);
  if (toLimit !== null) facts.push({ label: 'to limit', text: toLimit });
  facts.push({ label: 'how sure', text: confidenceText(finding.confidence) });
  return facts;
}

/** A rise that is over: the onset may lie well before it, where the defrosts or the valve told of it first. */
function levelledOff({ measures }: Finding): Fact[] {
  const days = (wanted: string): number | undefined => measures.find(({ name }) => name === wanted)?.value;
  const rose = days('daysOfRise');
  const since = days('daysSinceRise');
  if (rose === undefined || since === undefined) return [];
  const text = `it rose over ${formatDays(rose)} and has stood there for the last ${formatDays(since)}`;
  return [{ label: 'how fast', text }];
}
