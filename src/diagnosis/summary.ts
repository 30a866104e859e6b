import type { Evidence } from '../model/evidence.ts';
import type { Projection } from '../model/finding.ts';
import type { Signals } from '../signals/types.ts';
import {
  formatDays,
  formatDifference,
  formatLocalDate,
  formatLocalTime,
  formatTemperature,
} from '../units/display.ts';
import { isDecided, type Judgement } from './judgement.ts';
import { featuresOf, type Trouble } from './trouble.ts';

const dayMs = 86_400_000;

/** One sentence: where, what, since when, whose fault, how long until the limit. */
export function summarise(
  trouble: Trouble,
  judgement: Judgement,
  projection: Projection | null,
  signals: Signals,
): string {
  const { log } = signals;
  const { lead } = trouble;
  const features = featuresOf(trouble);
  const circuit = trouble.circuit?.circuit;
  const where =
    circuit === undefined
      ? ''
      : `${circuit.name === circuit.id ? circuit.id : `${circuit.id} ${circuit.name}`}: `;
  const since = lead.shape === 'step' ? formatLocalTime(lead.onset, log) : formatLocalDate(lead.onset, log);
  const ended = lead.end === null ? '' : `, over since ${formatLocalTime(lead.end, log)}`;
  switch (trouble.scope) {
    case 'one-probe': {
      const shift = features.shift ?? features.rise ?? 0;
      const amount = formatDifference(Math.abs(shift), log.units);
      const way = shift >= 0 ? 'above' : 'below';
      if (lead.shape === 'constant') {
        return `${where}${lead.probe} has stood ${amount} ${way} its neighbours since the export begins: a habit, no change.`;
      }
      if (lead.shape === 'wide-since-start') {
        return `${where}${lead.probe} stands ${amount} ${way} its neighbours, and has since the export begins: ${verdict(judgement)}.`;
      }
      const verb = lead.shape === 'creep' ? 'crept' : 'went';
      return `${where}${lead.probe} ${verb} ${amount} ${way} its neighbours since ${since}${ended}: ${verdict(judgement)}${limitClause(projection, signals)}.`;
    }
    case 'whole-circuit': {
      if (lead.shape === 'duty') {
        return `${where}the valve feeds ever more of the time since ${since} while the air still holds: it is losing its reserve${limitClause(projection, signals)}.`;
      }
      const rise = formatDifference(features.rise ?? 0, log.units);
      const verb = lead.shape === 'creep' ? 'crept' : 'went';
      return `${where}all its air ${verb} up by ${rise} since ${since}, the other circuits did not: ${wholeVerdict(judgement)}${limitClause(projection, signals)}.`;
    }
    case 'dead-probe':
      if (lead.shape === 'episodes') return episodesSummary(trouble, judgement, signals, where);
      if (lead.shape === 'swapped') {
        return swappedSummary(trouble, signals, where);
      }
      return `${where}${lead.probe} ${deadWords[lead.shape] ?? 'does not measure'} since ${formatLocalTime(lead.onset, log)}${ended}: ${deadVerdict(trouble)}.`;
    default:
      return otherSummary(trouble, judgement, where, since + ended);
  }
}

/** `points` hold the probe first, then its partner or the probes of the circuit whose defrosts it follows. */
function swappedSummary({ lead }: Trouble, signals: Signals, where: string): string {
  const at = formatLocalTime(lead.onset, signals.log);
  const host = signals.circuits.find(
    ({ circuit }) =>
      circuit.id !== lead.circuit && circuit.probes.some((probe) => probe.point === lead.points[1]),
  );
  return host === undefined
    ? `${where}${lead.points.join(' and ')} exchanged their readings at ${at}: two leads or channels were probably swapped.`
    : `${where}${lead.probe} has behaved as a probe of ${host.circuit.id} since ${at}: its lead or channel was probably swapped with one there.`;
}

function episodesSummary({ lead }: Trouble, judgement: Judgement, signals: Signals, where: string): string {
  const times = lead.features.episodes === 1 ? 'once' : `${lead.features.episodes} times`;
  const far = formatDifference(Math.abs(lead.features.shift ?? 0), signals.log.units);
  const why =
    judgement.origin === 'probe'
      ? 'it jumps as air cannot: a bad contact'
      : 'slowly, as air does: door, load or fan';
  return `${where}${lead.probe} left its neighbours ${times} for hours, by up to ${far}, since ${formatLocalTime(lead.onset, signals.log)}: ${why}.`;
}

const deadWords: Readonly<{ [shape: string]: string }> = {
  stuck: 'has not moved',
  'open-or-short': 'reads the end of its scale',
  silent: 'has given no reading',
  flutter: 'jumps from sample to sample',
};

function verdict(judgement: Judgement): string {
  if (!isDecided(judgement)) {
    return judgement.origin === 'probe'
      ? 'rather the probe than the case, but the data cannot tell'
      : 'rather the case than the probe, but the data cannot tell';
  }
  const words: Readonly<{ [cause: string]: string }> = {
    'airflow-or-ice': 'truly warm, probably ice or blocked air',
    'evaporator-fan': 'truly warm, probably a fan',
    'door-or-load': 'truly warm, most in trading hours: doors or loading',
    underfeeding: 'truly warm, probably too little liquid',
    'set-point': 'as after a change of the set point',
  };
  const first = judgement.causes[0]!.cause;
  if (words[first] !== undefined) return words[first];
  return judgement.origin === 'probe' ? 'the probe lies, the air does not' : 'the case is truly warm';
}

function deadVerdict({ lead, evidence }: Trouble): string {
  if (evidence.some(({ shape }) => shape === 'off')) return 'and the circuit has stood without cooling since';
  return lead.shape === 'flutter'
    ? 'its control works on numbers that are not air'
    : 'the circuit is controlled without it or by a wrong number';
}

function wholeVerdict(judgement: Judgement): string {
  if (isDecided(judgement)) return verdict(judgement);
  return judgement.origin === 'control'
    ? 'rather a new set point than a trouble of the case, but the data cannot tell'
    : 'rather the case than a new set point, but the data cannot tell';
}

function limitClause(projection: Projection | null, signals: Signals): string {
  if (projection?.at == null) return '';
  const { grid } = signals.log;
  const now = grid.startMs + grid.count * grid.stepMs;
  const limit = formatTemperature(projection.limit, signals.log.units);
  if (projection.at <= now) return `; its air is at the limit of ${limit} now`;
  const days = formatDays(Math.max(1, Math.round((projection.at - now) / dayMs)));
  return `; its air reaches ${limit} in about ${days} if it goes on`;
}

function otherSummary(trouble: Trouble, judgement: Judgement, where: string, since: string): string {
  const { lead } = trouble;
  const cause = judgement.causes[0]!.cause;
  switch (trouble.scope) {
    case 'defrost':
      return `${where}${defrostWords(lead)} since ${since}.`;
    case 'cycling':
      return `${where}${lead.points[0] ?? 'the machine'} starts too often since ${since}: ${cause === 'tight-differential' ? 'the differential is probably too tight' : 'look at its control'}.`;
    case 'superheat':
      return `${where}superheat while feeding and settled is ${lead.shape} since ${since}.`;
    case 'left-off':
      return `${where}it has stood without cooling or under an override since ${since}: find out whether it was left so.`;
    case 'rack':
      return rackSummary(trouble, since);
    default:
      return recordSummary(trouble, where, since);
  }
}

function defrostWords({ kind, shape, probe }: Evidence): string {
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
  return words[shape] ?? `${air} has come back ever later after defrost`;
}

const rackWords: Readonly<{ [shape: string]: string }> = {
  high: 'the suction pressure stands above its target',
  'target-raised': 'the target of the suction pressure was raised',
  'capacity-shortfall': 'the compressors that run cannot hold the suction pressure',
  'group-warm': 'most of its circuits are warm together',
  low: 'the suction pressure stands below its target',
  'low-pressure-trips': 'the suction pressure falls to the cut-out again and again',
  'service-visit': 'it was pulled down or shut as for a repair',
  'float-stopped': 'the target of the suction pressure no longer floats',
  'condensing-high': 'the condensing pressure is higher than it used to be at the same weather',
  'level-low': 'the liquid level is far under its usual range',
};

function rackSummary(trouble: Trouble, since: string): string {
  const { lead, covers } = trouble;
  const what = rackWords[lead.shape] ?? 'its pressure is off';
  const many = covers.length === 0 ? '' : `, and ${covers.join(', ')} went warm with it`;
  const where = covers.length === 0 ? '' : ': look at the rack, not at the cases';
  return `Suction group ${lead.suctionGroup}: ${what} since ${since}${many}${where}.`;
}

function recordSummary({ lead }: Trouble, where: string, since: string): string {
  const points = lead.points.join(' and ');
  switch (lead.shape) {
    case 'gap':
      return `Nothing at all was logged for a time from ${since}: what happened then is unknown.`;
    case 'not-connected':
      return `${where}${points} never moves: probably not connected.`;
    case 'thin':
      return `${where}${points} has few readings: what it says carries little weight.`;
    case 'twin':
      return `${where}${points} hold the same readings: one channel under two names.`;
    case 'unit-change':
      return `${where}${points} seems to change between Fahrenheit and Celsius on ${since}.`;
    default:
      return `${where}the record is doubtful from ${since}.`;
  }
}
