import type { Evidence } from '../../model/evidence.ts';
import type { Projection } from '../../model/finding.ts';
import type { Log } from '../../model/log.ts';
import { formatDifference, formatMinutes, formatShare } from '../../units/display.ts';
import { formatNumber } from '../../units/format-number.ts';
import type { Judgement } from '../judgement.ts';
import { lacksByNight } from '../lacks-by-night.ts';
import { featuresOf, type Trouble } from '../trouble.ts';
import { againstClause } from './against-clause.ts';
import { limitClause, placeClause, pointName, sinceClause, verdictClause } from './clauses.ts';
import { movedSummary } from './moved-summary.ts';

/** A circuit that is warm, or about to be, as a whole. */
export function wholeCircuitSummary(
  trouble: Trouble,
  judgement: Judgement,
  projection: Projection | null,
  log: Log,
): string {
  const place = placeClause(trouble);
  const since = sinceClause(trouble, log);
  const limit = limitClause(projection, log);
  if (trouble.lead.shape === 'duty') {
    return `${place}the valve feeds ever more of the time ${since} while the air still holds: it is losing its reserve${limit}.`;
  }
  const features = featuresOf(trouble);
  const rise = formatDifference(features.rise ?? 0, log.units);
  if (trouble.lead.shape === 'trading-hours') {
    const verdict = lacksByNight(features)
      ? ', but it comes back later from the defrosts of the night as well: truly warm, its coil has lost capacity'
      : ': truly warm, by doors or loading';
    return `${place}in trading hours its air has stood ${rise} higher than before ${since}, by night as ever${verdict}.`;
  }
  const verb = trouble.lead.shape === 'creep' ? 'crept' : 'went';
  const others = features.compared === 0 ? '' : ', the other circuits did not';
  return `${place}all its air ${verb} up by ${rise} ${since}${others}: ${verdictClause(judgement, 'a new set point')}${limit}.`;
}

export function defrostSummary(trouble: Trouble, log: Log): string {
  if (trouble.lead.shape === 'moved' || trouble.lead.shape === 'clock-moved')
    return movedSummary(trouble, log);
  const habit = habitOf(trouble.lead);
  if (habit !== null) return `${placeClause(trouble)}${habit}.`;
  return `${placeClause(trouble)}${defrostWords(trouble.lead)} ${sinceClause(trouble, log)}${recoveryClause(trouble.lead)}${sizeClause(trouble.lead, log)}.`;
}

/** A recovery that is long and always was so. */
function habitOf({ shape, probe, features, measures }: Evidence): string | null {
  if (shape !== 'slow' || !(features.recoveryRatio! < 1.25)) return null;
  const minutes = measures.find((one) => one.name === 'recovery')?.value ?? Number.NaN;
  return `${probe ?? 'the air'} takes ${formatMinutes(Math.round(minutes))} to come back after a defrost, long for its kind, and has since the export begins`;
}

/** `: 47 min where 17 min were usual`. */
function recoveryClause({ measures }: Evidence): string {
  const measured = (...names: string[]) => measures.find((one) => names.includes(one.name))?.value;
  const now = measured('recoveryNow', 'recovery', 'defrostLength');
  const usual = measured('recoveryAtStart', 'usualRecovery', 'usualDefrostLength');
  if (now === undefined || usual === undefined) return '';
  return `: ${formatMinutes(Math.round(now))} where ${formatMinutes(Math.round(usual))} were usual`;
}

/** How little it warmed against what it did, or how many were missed. */
function sizeClause(lead: Evidence, { units }: Log): string {
  const missed = lead.measures.find(({ name }) => name === 'missedDefrosts')?.value;
  const share = lead.measures.find(({ name }) => name === 'missedSince')?.value;
  if (missed !== undefined && share !== undefined)
    return ` (${missed}; ${formatShare(share / 100)} of those due since then)`;
  return againstClause(lead, [['peakRise', 'usualPeakRise', (rise) => formatDifference(rise, units)]]);
}

function defrostWords({ kind, shape, probe, features }: Evidence): string {
  if (kind === 'defrost-missed') {
    return shape === 'none-seen' || shape === 'fewer-than-planned'
      ? 'it has had fewer defrosts than planned'
      : 'defrosts that were due did not come';
  }
  const air = probe ?? 'the air';
  const words: Readonly<{ [shape: string]: string }> = {
    'weak-rise': 'its defrosts have hardly warmed the coil',
    extended: 'its defrosts have run longer than they used to',
    'ended-early': 'its defrosts have ended sooner than they used to',
    'by-the-clock': 'its defrosts have ended by the clock and no longer by temperature',
    overheated: 'its defrosts have heated on after the melt',
    'drip-lost': 'its defrosts have gone without a drip time',
    slow: `${air} has come back late after defrost`,
    'not-recovered': `${air} has often not come back before the next defrost`,
  };
  return (
    words[shape] ?? `${air} has come back ${features.grows === 0 ? 'later' : 'ever later'} after defrost`
  );
}

export function cyclingSummary(trouble: Trouble, judgement: Judgement, log: Log): string {
  const machines = new Set(
    trouble.evidence
      .filter(({ kind }) => kind === 'short-cycling')
      .map(({ points }) => points[0])
      .filter((point) => point !== undefined),
  );
  const names = machines.size === 0 ? 'the machine' : [...machines].join(', ');
  if (['in-step', 'valves-together'].includes(trouble.lead.shape)) return inStepSummary(trouble, log);
  if (trouble.lead.features.byAir === 1)
    return `${placeClause(trouble)}its air swings less and faster than it did ${sinceClause(trouble, log)}: its valve, which is not logged, probably starts too often, by a differential that is too tight.`;
  const isDrawnDown = trouble.evidence.some(({ shape }) => shape === 'low');
  const why =
    judgement.causes[0]!.cause === 'tight-differential'
      ? 'the differential is probably too tight'
      : isDrawnDown
        ? 'the suction is drawn down to the cut-out: look at what keeps machines on'
        : 'look at its control';
  const verb = machines.size > 1 ? 'start' : 'starts';
  return `${placeClause(trouble)}${names} ${verb} too often${startsClause(trouble)} ${sinceClause(trouble, log)}: ${why}.`;
}

/** ` (13 an hour against 2.5 an hour)` of the machine that starts most. */
function startsClause({ evidence }: Trouble): string {
  const rate = ({ measures }: Evidence) => measures.find(({ name }) => name === 'startsPerHour')?.value ?? 0;
  const most = evidence.reduce((busiest, one) => (rate(one) > rate(busiest) ? one : busiest));
  const anHour = (starts: number) => `${formatNumber(starts, starts < 9.95 ? 1 : 0)} an hour`;
  return againstClause(most, [['startsPerHour', 'usualStartsPerHour', anHour]]);
}

const togetherWords: Readonly<{ [shape: string]: string }> = {
  'in-step': 'the valves of its circuits open and shut together',
  'valves-together': 'the valves of its circuits began at one time to start too often,',
};
const airTogether =
  'the air of its circuits goes up and down together within minutes, so their valves, which are not logged, probably open and shut together';

/** `…: the valves of its circuits open and shut together since …: Compressor A starts too often for it, and it shows in M01.` */
function inStepSummary(trouble: Trouble, log: Log): string {
  const { lead, evidence, covers } = trouble;
  const what = lead.features.byAir === 1 ? airTogether : (togetherWords[lead.shape] ?? airTogether);
  const machines = [
    ...new Set(
      evidence.filter(({ shape }) => shape === 'compressor').map(({ points }) => pointName(points[0]!)),
    ),
  ];
  const verb = machines.length > 1 ? 'start' : 'starts';
  const effects = [
    ...(lead.features.tooOften === 1 ? ['they start too often'] : []),
    ...(machines.length === 0 ? [] : [`${machines.join(', ')} ${verb} too often for it`]),
    ...(covers.length === 0 ? [] : [`it shows in ${covers.join(', ')}`]),
  ];
  const effect = effects.length === 0 ? 'as far as is seen they do no harm' : listed(effects);
  return `Suction group ${lead.suctionGroup}: ${what} ${sinceClause(trouble, log)}: ${effect}.`;
}

function listed(clauses: readonly string[]): string {
  const [last, ...first] = [...clauses].reverse();
  return first.length === 0 ? last! : `${first.reverse().join(', ')}, and ${last}`;
}

const superheatWords: Readonly<{ [shape: string]: string }> = {
  starving: 'superheat is high while it feeds and has settled: the coil gets too little liquid',
  flooding: 'superheat is almost gone while it feeds: liquid may come back to the rack',
  hunting: 'superheat swings while it feeds: its valve hunts',
};

export function superheatSummary(trouble: Trouble, log: Log): string {
  const { lead } = trouble;
  const what = superheatWords[lead.shape] ?? 'superheat is off';
  const kelvin = (value: number) => formatDifference(value, log.units);
  const size = lead.shape === 'hunting' ? '' : againstClause(lead, [['superheat', 'usualSuperheat', kelvin]]);
  return `${placeClause(trouble)}${what}, ${sinceClause(trouble, log)}${size}.`;
}
