import type { Projection } from '../../model/finding.ts';
import type { Signals } from '../../signals/types.ts';
import { formatDayAndTime, formatDifference } from '../../units/display.ts';
import type { Judgement } from '../judgement.ts';
import { isSetRight } from '../set-right.ts';
import { featuresOf, type Trouble } from '../trouble.ts';
import { limitClause, placeClause, pointName, sinceClause, verdictClause } from './clauses.ts';

/** A probe that stands apart from its neighbours, or came to. */
export function oneProbeSummary(
  trouble: Trouble,
  judgement: Judgement,
  projection: Projection | null,
  { log }: Signals,
): string {
  const { shape } = trouble.lead;
  const probe = pointName(trouble.lead.probe);
  const features = featuresOf(trouble);
  const shift = features.shift ?? features.rise ?? 0;
  const apart = `${formatDifference(Math.abs(shift), log.units)} ${shift >= 0 ? 'above' : 'below'} its neighbours`;
  const place = placeClause(trouble);
  const verdict = verdictClause(judgement, 'the probe');
  if (shape === 'constant') {
    return `${place}${probe} has stood ${apart} since the export begins: a habit, no change.`;
  }
  if (shape === 'wide-since-start') {
    return `${place}${probe} stands ${apart}, and has since the export begins: ${verdict}.`;
  }
  if (isSetRight(trouble, judgement)) {
    const before = formatDifference(Math.abs(features.offsetBefore!), log.units);
    const side = features.offsetBefore! < 0 ? 'below' : 'above';
    return `${place}${probe} stood ${before} ${side} its neighbours and stands with them ${sinceClause(trouble, log)}: it was probably replaced or set right.`;
  }
  const verb = shape === 'creep' ? 'crept' : 'went';
  const pair = features.probes === 2 ? '; of two probes either may be the one that is wrong' : '';
  return `${place}${probe} ${verb} ${apart} ${sinceClause(trouble, log)}: ${verdict}${limitClause(projection, log)}${pair}.`;
}

const deadWords: Readonly<{ [shape: string]: string }> = {
  stuck: 'has not moved',
  'open-or-short': 'reads the end of its scale',
  silent: 'has given no reading',
  flutter: 'jumps from sample to sample',
};

/** A probe that does not measure, or not where it should. */
export function deadProbeSummary(trouble: Trouble, judgement: Judgement, signals: Signals): string {
  const { lead } = trouble;
  if (lead.shape === 'episodes') return episodesSummary(trouble, judgement, signals);
  if (lead.shape === 'swapped') return swappedSummary(trouble, signals);
  const what = deadWords[lead.shape] ?? 'does not measure';
  return `${placeClause(trouble)}${pointName(lead.probe)} ${what} ${sinceClause(trouble, signals.log)}: ${consequence(trouble)}.`;
}

function consequence({ lead, evidence }: Trouble): string {
  if (evidence.some(({ shape }) => shape === 'off')) return 'and the circuit has stood without cooling';
  return lead.shape === 'flutter'
    ? 'its control works on numbers that are not air'
    : 'the circuit is controlled without it or by a wrong number';
}

/** `points` hold the probe first, then its partner or the probes of the circuit that it behaves like. */
function swappedSummary(trouble: Trouble, signals: Signals): string {
  const { lead } = trouble;
  const place = placeClause(trouble);
  const at = formatDayAndTime(lead.onset, signals.log);
  const host = signals.circuits.find(
    ({ circuit }) =>
      circuit.id !== lead.circuit && circuit.probes.some((probe) => probe.point === lead.points[1]),
  );
  const partner = lead.features.partnerSeen === 1 ? pointName(lead.points[1]!) : 'one';
  return host === undefined
    ? `${place}${lead.points.map(pointName).join(' and ')} exchanged their readings at ${at}: two leads or channels were probably swapped.`
    : `${place}${pointName(lead.probe)} has behaved as a probe of ${host.circuit.id} since ${at}: its lead or channel was probably swapped with ${partner} there.`;
}

function episodesSummary(trouble: Trouble, judgement: Judgement, { log }: Signals): string {
  const { lead } = trouble;
  const times = lead.features.episodes === 1 ? 'once' : `${lead.features.episodes} times`;
  const far = formatDifference(Math.abs(lead.features.shift ?? 0), log.units);
  const why =
    judgement.origin === 'probe'
      ? 'it jumps as air cannot: a bad contact'
      : 'slowly, as air does: door, load or fan';
  return `${placeClause(trouble)}${pointName(lead.probe)} left its neighbours ${times} for hours, by up to ${far}, since ${formatDayAndTime(lead.onset, log)}: ${why}.`;
}
