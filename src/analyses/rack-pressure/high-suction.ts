import { median } from '../../maths/median.ts';
import type { Evidence, Measure } from '../../model/evidence.ts';
import { knownRefrigerant } from '../../refrigerants/saturation.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../../signals/types.ts';
import type { Kelvin } from '../../units/quantities.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf, type Shape } from './evidence.ts';
import { type HighPeriod, highPeriod } from './high-period.ts';
import { runningIn } from './running.ts';
import { settings } from './settings.ts';
import type { SuctionHours } from './suction-hours.ts';
import { suctionLevels } from './suction-levels.ts';
import { stepFeatures, stepMeasures } from './target-changed.ts';
import type { TargetStep } from './target-step.ts';
import { warmShare } from './warm-share.ts';
import { spellFeatures } from './warm-spell.ts';

const hourMs = 3_600_000;

/**
 * Suction above its norm, above its target all along, or following a target that was raised: one finding for the
 * group, with the share of its circuits that are warm with it and what the compressors did meanwhile.
 */
export function highSuction(
  group: GroupSignals,
  members: readonly CircuitSignals[],
  hours: SuctionHours,
  step: TargetStep | null,
  site: Signals,
): Evidence[] {
  const { log } = site;
  const limit = limitOf(hours);
  const overNorm = highPeriod(hours.aboveNorm, limit, log);
  if (overNorm !== null) return high(group, members, hours, step, hours.aboveNorm, overNorm, null, site);
  const raised = hours.hasTarget ? highPeriod(hours.targetMoved, settings.high.value, log) : null;
  if (raised !== null)
    return high(group, members, hours, step, hours.targetMoved, raised, 'target-raised', site);
  const always = hours.hasTarget ? highPeriod(hours.aboveTarget, limit, log) : null;
  const wasSo = median(hours.aboveTarget) > limit;
  return always !== null && wasSo
    ? high(group, members, hours, step, hours.aboveTarget, always, null, site)
    : [];
}

/** Above what matters to a case, and above what the machines of this group do to it all the time. */
function limitOf({ scatter }: SuctionHours): Kelvin {
  return Math.max(settings.high.value, settings.highScales.value * scatter);
}

function high(
  group: GroupSignals,
  members: readonly CircuitSignals[],
  hours: SuctionHours,
  step: TargetStep | null,
  height: Float64Array,
  period: HighPeriod,
  shape: Shape | null,
  { log }: Signals,
): Evidence[] {
  const floor = period.isCreeping ? settings.crept.value / 2 : limitOf(hours);
  const chosen: number[] = [];
  for (let k = period.from; k < (period.to ?? height.length); k++) if (height[k]! > floor) chosen.push(k);
  const recent = chosen.slice(-72);
  const warm = warmShare(members, recent, Math.max(24, period.from));
  const running = runningIn(group, recent, period.from, log.grid);
  const isShort =
    running !== null && (running.allRunningShare >= settings.allRunning.value || running.dead > 0);
  const isFelt = isShort || warm.warm.length > 0;
  if (!isFelt && period.hoursShare < settings.unfeltHours.value) return [];
  const isRaised = shape === 'target-raised' || (!isShort && isNear(step, period));
  const isShared = warm.share >= settings.warmShare.value;
  const isOverTarget =
    hours.hasTarget && median(recent.map((k) => hours.aboveTarget[k]!)) >= settings.crept.value;
  return [
    evidenceOf(group, {
      shape: isRaised ? 'target-raised' : isShort ? 'capacity-shortfall' : 'high',
      onset: log.grid.startMs + period.from * hourMs,
      end: period.to === null ? null : log.grid.startMs + period.to * hourMs,
      certainty: 0.5 + 0.2 * period.share + (isShared ? 0.2 : 0) + Math.min(0.15, period.height / 25),
      measures: [
        riseMeasure(group, period.height),
        ...(isRaised ? [] : suctionLevels(group, recent, period.from, isOverTarget, log)),
        measure('circuitsWarm', 100 * warm.share, '%'),
        measure('circuitRise', warm.rise, 'K'),
        ...(isRaised && step !== null && step.moved > 0 ? stepMeasures(step) : []),
        measure('allRunning', running === null ? Number.NaN : 100 * running.allRunningShare, '%'),
      ],
      features: {
        height: period.height,
        overTarget: isOverTarget ? 1 : 0,
        creeping: period.isCreeping ? 1 : 0,
        shareWarm: warm.share,
        circuitRise: warm.rise,
        daysShare: period.share,
        ...(isRaised ? {} : spellFeatures(group, members, height, limitOf(hours), period, recent, log)),
        aboveTarget: median(recent.map((k) => hours.aboveTarget[k]!)),
        targetMoved: hours.hasTarget ? median(recent.map((k) => hours.targetMoved[k]!)) : Number.NaN,
        allRunningShare: running?.allRunningShare ?? Number.NaN,
        runningShare: running?.runningShare ?? Number.NaN,
        ...(isRaised && step !== null && step.moved > 0 ? stepFeatures(step) : {}),
        deadCompressors: running?.dead ?? Number.NaN,
      },
      points: [group.group.pressure?.point, ...group.group.compressors.map((record) => record.point)],
    }),
  ];
}

/** A target that was raised, though only the pressure tells of it, when it became high. */
function isNear(step: TargetStep | null, { from }: HighPeriod): boolean {
  return step !== null && step.moved > 0 && Math.abs(step.from - from) <= settings.targetHours.value;
}

/** The rise as saturated temperature; of a refrigerant that is not known, as a share of the pressure. */
export function riseMeasure({ group: { refrigerant } }: GroupSignals, height: Kelvin): Measure {
  return refrigerant !== null && knownRefrigerant(refrigerant) !== null
    ? measure('saturatedRise', height, 'K')
    : measure('suctionRise', 100 * Math.expm1(height * settings.pressurePerKelvin.value), '%');
}
