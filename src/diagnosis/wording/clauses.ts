import type { Projection } from '../../model/finding.ts';
import type { Log } from '../../model/log.ts';
import { formatDay, formatDayAndTime, formatDays, formatTemperature } from '../../units/display.ts';
import { isDecided, type Judgement } from '../judgement.ts';
import type { Trouble } from '../trouble.ts';

const dayMs = 86_400_000;
const datedToTheHour: readonly string[] = [
  'step',
  'stuck',
  'open-or-short',
  'silent',
  'flutter',
  'off',
  'was-off',
];

/** The name of a point without the unit that its header carries: `M01 air A (°F)` is `M01 air A`. */
export function pointName(point: string | null): string {
  return (point ?? '').replace(
    /\s*[([](?:(?:0[.,]0?1|1\/100?) ?)?(?:°|deg)?\s?[FCfc](?: ?[x×*·/] ?100?)?[)\]]$/,
    '',
  );
}

/** `M01 Cut fruit line-up: `, or nothing for what concerns no circuit. */
export function placeClause({ circuit }: Trouble): string {
  if (circuit === null) return '';
  const { id, name } = circuit.circuit;
  return name === id ? `${id}: ` : `${id} ${name}: `;
}

/** `since Sat 12 Sep, 14:30, over since …`: to the hour where the moment is known, else to the day. */
export function sinceClause({ lead }: Trouble, log: Log): string {
  const onset = datedToTheHour.includes(lead.shape)
    ? formatDayAndTime(lead.onset, log)
    : formatDay(lead.onset, log);
  return lead.end === null
    ? `since ${onset}`
    : `since ${onset}, over since ${formatDayAndTime(lead.end, log)}`;
}

const limitWords = {
  site: 'its alarm limit of',
  food: 'the cold-holding limit for food of',
  'set-point': 'the usual margin over its set point,',
} as const;

/** Where its settled air stands to the limit and when it meets it; nothing where neither is known. */
export function limitClause(projection: Projection | null, log: Log): string {
  if (projection === null) return '';
  const { at, earliest, latest, levelNow, limitSource } = projection;
  const limit = `${limitSource === undefined ? '' : `${limitWords[limitSource]} `}${formatTemperature(projection.limit, log.units)}`;
  const stands = `; its settled air, which is not food, stands at ${formatTemperature(levelNow ?? Number.NaN, log.units)}`;
  if (at === null) return levelNow === undefined ? '' : `${stands}, below ${limit}`;
  const now = log.grid.startMs + log.grid.count * log.grid.stepMs;
  if (at <= now)
    return levelNow === undefined ? `; its air is at ${limit} now` : `${stands}, at or over ${limit}`;
  const days = (time: number): number => Math.max(1, Math.round((time - now) / dayMs));
  const when = `; its air reaches ${limit} in about ${formatDays(days(at))}`;
  if (earliest === null) return `${when} if it goes on`;
  if (latest !== null) return `${when} (${days(earliest)} to ${days(latest)}) if it goes on`;
  return `${when} if it goes on, ${formatDays(days(earliest))} at the soonest, and may never get there`;
}

const causeVerdicts: Readonly<{ [cause: string]: string }> = {
  'airflow-or-ice': 'truly warm, probably ice or blocked air',
  'evaporator-fan': 'truly warm, probably a fan',
  'door-or-load': 'truly warm, probably a door that stands open or does not seal, or its loading',
  underfeeding: 'truly warm, probably too little liquid',
  'set-point': 'as after a change of the set point',
  'probe-moved': 'it reads another air: the probe was probably moved',
  'probe-open-or-short': 'the probe lies: probably an open or shorted lead',
};

/** Whose fault, in half a line; where the data leave it open, that they do. */
export function verdictClause(judgement: Judgement, alternative: string): string {
  const isCase = judgement.origin === 'case';
  if (!isDecided(judgement)) {
    return `rather ${isCase ? 'the case' : alternative} than ${isCase ? alternative : 'the case'}, but the data cannot tell`;
  }
  const first = judgement.causes[0]!;
  if (isCase && first.likelihood < 0.5) return 'the case is truly warm, and the cause is open';
  const named = causeVerdicts[first.cause];
  if (named !== undefined) return named;
  return judgement.origin === 'probe' ? 'the probe lies, the air does not' : 'the case is truly warm';
}
