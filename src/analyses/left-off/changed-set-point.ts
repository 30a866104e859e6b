import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { dayAt, samplesIn } from '../../model/grid.ts';
import type { CircuitSignals, SetPointStep } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf } from './evidence.ts';
import { settings } from './settings.ts';

/**
 * A set point that went to another value with no visit near and stands there: by its column, or by all air that stepped
 * at one time and holds there while the valve feeds no more for warmer air and no less for colder. Whoever meant it
 * knows; a set-back by the clock and a value that is moved every few days do not stand long enough. Only the steps count: what
 * else the air did between two of them was no set point.
 */
export function changedSetPoint(signals: CircuitSignals): Evidence[] {
  const { setPointSteps: steps, log } = signals;
  const standing = samplesIn(log.grid, 60 * settings.changedHours.value);
  const now = steps.at(-1);
  if (now === undefined || log.grid.count - now.at < standing || isBack(steps, now)) return [];
  const first = steps.findIndex((step, i) => step.at - (steps[i - 1]?.at ?? 0) >= standing);
  const change = steps[first];
  const moved = steps.slice(Math.max(0, first)).reduce((sum, { from, to }) => sum + to - from, 0);
  if (change === undefined || Math.abs(moved) < settings.changedLeast.value) return [];
  const isLogged = change.source === 'column';
  const duty = dutyAround(signals, change);
  return [
    evidenceOf(signals, {
      shape: 'set-point-changed',
      from: change.at,
      to: null,
      certainty: isLogged ? 0.85 : 0.6,
      measures: [
        measure('setPointBefore', change.from, 'Cel'),
        measure('setPointNow', change.from + moved, 'Cel'),
        measure('setPointChange', moved, 'K'),
        measure('feedingBefore', 100 * duty.before, '%'),
        measure('feedingNow', 100 * duty.now, '%'),
      ],
      features: {
        setPointChange: moved,
        fromColumn: isLogged ? 1 : 0,
        dutyChange: duty.now - duty.before,
        still: 1,
      },
    }),
  ];
}

/** True when it stands at a value that was in force before. */
function isBack(steps: readonly SetPointStep[], now: SetPointStep): boolean {
  return steps.some(({ from }) => Math.abs(now.to - from) <= settings.restoredWithin.value);
}

/** Daily share of time fed before the day of the step and after it; NaN without a valve. */
function dutyAround({ duty, log }: CircuitSignals, { at }: SetPointStep): { before: number; now: number } {
  const day = dayAt(log.calendar, at);
  return { before: median(duty.subarray(0, day)), now: median(duty.subarray(day + 1)) };
}
