import type { Evidence, Verdict } from '../../model/evidence.ts';
import { timeAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../../signals/types.ts';
import { abstention, groupSubject, measure } from '../evidence-parts.ts';
import { condensingHigh } from './condensing.ts';
import { evidenceOf } from './evidence.ts';
import { floatStopped } from './float.ts';
import { groupWarm } from './group-warm.ts';
import { highSuction } from './high-suction.ts';
import { lowLevel } from './liquid-level.ts';
import { lowSuction } from './low-suction.ts';
import { meta } from './meta.ts';
import { settings } from './settings.ts';
import { shortOfLiquid } from './short-of-liquid.ts';
import { type SuctionHours, suctionHours } from './suction-hours.ts';
import { suctionMoved, targetChanged } from './target-changed.ts';
import { targetLeft } from './target-left.ts';
import { type TargetStep, targetStep } from './target-step.ts';
import { lowPressureTrips } from './trips.ts';
import { serviceVisits, type Visit, visitHours } from './visits.ts';

export { meta };

const dayMs = 86_400_000;

/** One suction group: its pressures against target and norm, and whether its circuits are warm together. */
export function analyse(group: GroupSignals, site: Signals): Verdict {
  const { log } = site;
  const members = site.circuits.filter((one) => group.members.includes(one.circuit.id));
  if (log.calendar.days.length < meta.minimumDays) return { evidence: [], abstentions: [] };
  const further = [...condensingHigh(group, site), ...lowLevel(group, site)];
  const visits = serviceVisits(group, members, log);
  const hours = suctionHours(group, log, visitHours(visits, log));
  if (hours === null) {
    const reason =
      'No suction pressure is logged, so a common cause shows only by how many circuits are warm together.';
    return {
      evidence: [...groupWarm(group, site), ...further],
      abstentions: [abstention(meta.id, groupSubject(group.group), reason, 'suction pressure of the group')],
    };
  }
  const left = targetLeft(group, visits, hours, site);
  const step = left.length > 0 ? null : targetStep(group, members, hours, log);
  const against = againstTarget(group, members, hours, step, site);
  return {
    evidence: [
      ...against,
      ...(against.some(isHighNow) ? [] : shortOfLiquid(group, members, hours, site)),
      ...lowPressureTrips(group, visits, site),
      ...floatStopped(group, visits, site),
      ...left,
      ...personal(visits, members, log).map((visit) => visitEvidence(group, visit, site)),
      ...further,
    ],
    abstentions: [],
  };
}

/**
 * High, low, or following a target that somebody changed: then it is no longer low, and no longer high for a pressure that
 * has not risen.
 */
function againstTarget(
  group: GroupSignals,
  members: readonly CircuitSignals[],
  hours: SuctionHours,
  step: TargetStep | null,
  site: Signals,
): Evidence[] {
  const high = highSuction(group, members, hours, step, site);
  const low = lowSuction(group, hours, site);
  if (step === null) return [...high, ...low];
  const changed = targetChanged(group, step, hours, site);
  if (step.moved > 0) return high.some(({ shape }) => shape === 'target-raised') ? high : [...high, changed];
  const isUnrisen = suctionMoved(step, hours) < settings.targetLeft.value / 2;
  const risen = high.filter(({ onset }) => !isUnrisen || onset < changed.onset - dayMs);
  return [...risen, changed];
}

/** What warms the circuits is then the pressure. */
function isHighNow({ shape, end }: Evidence): boolean {
  return end === null && ['high', 'capacity-shortfall', 'target-raised'].includes(shape);
}

/** Somebody was there when circuits were shut for it, and when it is no habit. */
function personal(
  visits: readonly Visit[],
  members: readonly CircuitSignals[],
  { calendar }: Log,
): readonly Visit[] {
  const shut = visits.filter((visit) => visit.circuitsOff > 0 || members.length === 0);
  const most = settings.visitsAMonth.value * Math.max(1, calendar.days.length / 30);
  return shut.length > most ? [] : shut;
}

function visitEvidence(group: GroupSignals, visit: Visit, { log }: Signals): Evidence {
  return evidenceOf(group, {
    shape: 'service-visit',
    onset: timeAt(log.grid, visit.from),
    end: timeAt(log.grid, visit.to),
    certainty: visit.circuitsOff > 0 ? 0.9 : 0.7,
    measures: [
      measure('lowestSuction', 100 * visit.depth, '%'),
      measure('circuitsOff', 100 * visit.circuitsOff, '%'),
    ],
    features: { depth: visit.depth, circuitsOffShare: visit.circuitsOff },
    points: [group.group.pressure?.point],
  });
}
