import type { Projection } from '../../model/finding.ts';
import type { Log } from '../../model/log.ts';
import { formatDayAndTime, formatDifference, formatShare, formatTemperature } from '../../units/display.ts';
import type { Trouble } from '../trouble.ts';
import { limitClause, placeClause, sinceClause } from './clauses.ts';

const leftOffWords: Readonly<{ [shape: string]: string }> = {
  off: 'off: it has stood without cooling',
  'was-off': 'it stood without cooling',
  'override-on': 'held open: its valve has fed on although the air is cold, as under an override,',
  'override-was-on': 'its valve fed on although the air was cold, as under an override,',
};

/** A circuit that was stopped, a valve in hand, a set point that was changed. */
export function leftOffSummary(trouble: Trouble, projection: Projection | null, log: Log): string {
  const { shape } = trouble.lead;
  if (shape === 'set-point-left') return leftSetPoint(trouble, log);
  if (trouble.lead.features.inCooling === 1) return heldInCooling(trouble, log);
  if (trouble.lead.features.cycleLeft !== undefined) return stoppedCycling(trouble, log);
  if (shape === 'set-point-changed') return changedSetPoint(trouble, projection, log);
  const climbed = climbedClause(trouble, log);
  const words = leftOffWords[shape] ?? 'it was left changed';
  const what = climbed === '' ? words : words.replace('the air is cold', 'the air was cold at first');
  const then = trouble.lead.end === null ? ': find out whether it was left so' : '';
  return `${placeClause(trouble)}${what} ${sinceClause(trouble, log)}${climbed}${levelClause(trouble, log)}${then}.`;
}

/** `; its coil frosts, its air has climbed by 6 °F`: a coil that never rests ends warm. */
function climbedClause({ lead }: Trouble, { units }: Log): string {
  const { climbed } = lead.features;
  if (climbed === undefined) return '';
  const climb = `its air ${lead.end === null ? 'has climbed' : 'climbed'} by ${formatDifference(climbed, units)}`;
  return `; its coil ${lead.end === null ? 'frosts' : 'frosted'}, ${climb}`;
}

/** Under an override that lets no defrost come: the coil frosts, and what begins cold ends warm. */
function heldInCooling(trouble: Trouble, log: Log): string {
  const air = climbedClause(trouble, log);
  return `${placeClause(trouble)}held in cooling: its valve has fed without a pause and no defrost has come ${sinceClause(trouble, log)}, as under an override${air}${levelClause(trouble, log)}: find out whether it was left so, and defrost it.`;
}

/** No valve is logged: the air tells it by what it no longer does. */
function stoppedCycling(trouble: Trouble, log: Log): string {
  const left = formatShare(trouble.lead.features.cycleLeft ?? Number.NaN);
  return `${placeClause(trouble)}held open: its air has stood cold and kept ${left} of its cycle ${sinceClause(trouble, log)}, as where a valve is in hand${levelClause(trouble, log)}: find out whether it was left so.`;
}

function leftSetPoint(trouble: Trouble, log: Log): string {
  const seen = trouble.lead.features.fromColumn === 1 ? '' : ', as its air shows,';
  return `${placeClause(trouble)}its set point went${seen} ${fromTo(trouble, log)} at a visit on ${formatDayAndTime(trouble.lead.onset, log)} and still stands there: find out whether it was left so.`;
}

/** With no visit near: by its column, or by air that stepped as a whole while its valve went along with it. */
function changedSetPoint(trouble: Trouble, projection: Projection | null, log: Log): string {
  const { lead } = trouble;
  const place = placeClause(trouble);
  const at = formatDayAndTime(lead.onset, log);
  const limit = limitClause(projection, log);
  if (lead.features.fromColumn === 1)
    return `${place}its set point went ${fromTo(trouble, log)} on ${at}, with no visit seen, and stands there: ask who changed it and why${limit}.`;
  const change = lead.features.setPointChange ?? 0;
  const by = `${change < 0 ? 'down' : 'up'} by ${formatDifference(Math.abs(change), log.units)}`;
  return `${place}all its air stepped ${by} on ${at}, ${fromTo(trouble, log)}, and has held there${feedingClause(trouble)}: its set point was probably changed; ask who and why${limit}.`;
}

function fromTo(trouble: Trouble, { units }: Log): string {
  const at = (name: string) => formatTemperature(measured(trouble, name) ?? Number.NaN, units);
  return `from ${at('setPointBefore')} to ${at('setPointNow')}`;
}

/** ` while its valve feeds 40 % of the time where it fed 74 %`; without a valve, that it goes on cycling. */
function feedingClause(trouble: Trouble): string {
  const before = measured(trouble, 'feedingBefore');
  const now = measured(trouble, 'feedingNow');
  if (before === undefined || now === undefined) return ', cycling as before';
  return ` while its valve feeds ${formatShare(now / 100)} of the time where it fed ${formatShare(before / 100)}`;
}

/** `; its air stands at 70 °F` or `; its air stands at 31 °F at a set point of 37 °F`: what it came to. */
function levelClause(trouble: Trouble, { units }: Log): string {
  const level = measured(trouble, 'airNow') ?? measured(trouble, 'warmestAir');
  if (level === undefined) return '';
  const setPoint = measured(trouble, 'setPoint');
  const at = setPoint === undefined ? '' : ` at a set point of ${formatTemperature(setPoint, units)}`;
  const verb = trouble.lead.end === null ? 'stands at' : 'came to';
  return `; its air ${verb} ${formatTemperature(level, units)}${at}`;
}

function measured({ lead }: Trouble, name: string): number | undefined {
  return lead.measures.find((one) => one.name === name)?.value;
}
