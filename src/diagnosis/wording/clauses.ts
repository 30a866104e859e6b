import type { Projection } from '../../model/finding.ts';
import type { Log } from '../../model/log.ts';
import { formatDays, formatLocalDate, formatLocalTime, formatTemperature } from '../../units/display.ts';
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

/** `M01 Cut fruit line-up: `, or nothing for what concerns no circuit. */
export function placeClause({ circuit }: Trouble): string {
  if (circuit === null) return '';
  const { id, name } = circuit.circuit;
  return name === id ? `${id}: ` : `${id} ${name}: `;
}

/** `since 2026-09-12 14:30, over since …`: to the hour where the moment is known, else to the day. */
export function sinceClause({ lead }: Trouble, log: Log): string {
  const onset = datedToTheHour.includes(lead.shape)
    ? formatLocalTime(lead.onset, log)
    : formatLocalDate(lead.onset, log);
  return lead.end === null
    ? `since ${onset}`
    : `since ${onset}, over since ${formatLocalTime(lead.end, log)}`;
}

/** When its air meets the limit; nothing where no date can be given. */
export function limitClause(projection: Projection | null, log: Log): string {
  if (projection?.at == null) return '';
  const now = log.grid.startMs + log.grid.count * log.grid.stepMs;
  const limit = formatTemperature(projection.limit, log.units);
  if (projection.at <= now) return `; its air is at the limit of ${limit} now`;
  const days = formatDays(Math.max(1, Math.round((projection.at - now) / dayMs)));
  return `; its air reaches ${limit} in about ${days} if it goes on`;
}

const causeVerdicts: Readonly<{ [cause: string]: string }> = {
  'airflow-or-ice': 'truly warm, probably ice or blocked air',
  'evaporator-fan': 'truly warm, probably a fan',
  'door-or-load': 'truly warm, most in trading hours: doors or loading',
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
  const named = causeVerdicts[judgement.causes[0]!.cause];
  if (named !== undefined) return named;
  return judgement.origin === 'probe' ? 'the probe lies, the air does not' : 'the case is truly warm';
}
