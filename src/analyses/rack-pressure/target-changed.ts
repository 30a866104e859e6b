import { median } from '../../maths/median.ts';
import type { Evidence, Measure } from '../../model/evidence.ts';
import type { GroupSignals, Signals } from '../../signals/types.ts';
import type { Kelvin } from '../../units/quantities.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf } from './evidence.ts';
import type { SuctionHours } from './suction-hours.ts';
import type { TargetStep } from './target-step.ts';

const hourMs = 3_600_000;
/** A suction that went less than this share of the way with its target does not follow it. */
const followed = 0.5;

/**
 * A target that went to another value, with no visit near, and stands there: lowered, its coils are colder and the machines
 * work more; raised, cases with little reserve warm.
 */
export function targetChanged(
  group: GroupSignals,
  step: TargetStep,
  hours: SuctionHours,
  { log }: Signals,
): Evidence {
  const target = group.group.pressureSetPoint;
  const went = suctionMoved(step, hours);
  return evidenceOf(group, {
    shape: step.moved < 0 ? 'target-lowered' : 'target-raised',
    onset: log.grid.startMs + step.from * hourMs,
    end: null,
    certainty: step.fromColumn ? 0.85 : 0.6,
    measures: [
      ...stepMeasures(step),
      measure('targetMoved', step.moved, 'K'),
      measure('suctionMoved', went, 'K'),
    ],
    features: {
      targetMoved: step.moved,
      reached: went / step.moved >= followed ? 1 : 0,
      ...stepFeatures(step),
    },
    points: [
      ...(target !== null && typeof target !== 'number' ? [target.point] : []),
      group.group.pressure?.point,
    ],
  });
}

/** How far the suction itself went with it, K. */
export function suctionMoved({ from, fromColumn }: TargetStep, hours: SuctionHours): Kelvin {
  const suction = hours.aboveTarget.map((value, k) => value + (fromColumn ? hours.targetMoved[k]! : 0));
  return median(suction.subarray(from)) - median(suction.subarray(0, from));
}

export function stepMeasures({ before, now, fromColumn, dutyChange }: TargetStep): Measure[] {
  const of = fromColumn ? 'target' : 'suction';
  return [
    measure(`${of}Before`, before, 'kPa'),
    measure(`${of}Now`, now, 'kPa'),
    measure('feedingChange', 100 * dutyChange, '%'),
  ];
}

export function stepFeatures({ fromColumn, answering, dutyChange }: TargetStep): { [name: string]: number } {
  return { fromColumn: fromColumn ? 1 : 0, answering, dutyChange };
}
