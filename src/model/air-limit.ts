import type { Celsius } from '../units/quantities.ts';
import type { Circuit, SuctionGroup } from './log.ts';

export interface AirLimit {
  readonly value: Celsius;
  readonly source: 'site' | 'food' | 'set-point';
  /** Where the number comes from, for a report. */
  readonly cite: string;
}

/** 41 °F, cold holding of time/temperature-controlled food: US FDA Food Code 2022, 3-501.16(A)(2). */
export const coldHoldingLimit: Celsius = 5;
/** A set point so far below the cold-holding limit is clearly below it: 3 °F. Common practice, no source. */
export const coldHoldingClearance = 5 / 3;
/** Above a set point that already stands over the cold-holding limit: 8 °F. Common practice, no source. */
const mediumMargin = 40 / 9;
/** Above the set point of frozen cases: 10 °F. Common practice, no source. */
const frozenMargin = 50 / 9;
/** Set points below this are frozen where the class of the group is not given. */
const frozenBelow: Celsius = -10;

/**
 * The level that air of this circuit should stay under: the alarm limit in force; else for medium temperature
 * the published cold-holding limit when the set point lies below it; else a margin over the set point. It is
 * a limit for food held against air, so it is a cue and never a statement about food. Null without set point
 * and limit.
 *
 * @param setPoint usual set point, NaN where unknown
 */
export function airLimit(circuit: Circuit, group: SuctionGroup | null, setPoint: Celsius): AirLimit | null {
  if (circuit.limits !== null) {
    return { value: circuit.limits.high, source: 'site', cite: 'the alarm limit in force' };
  }
  if (!Number.isFinite(setPoint)) return null;
  const frozen = group?.class === 'low' || (group?.class == null && setPoint < frozenBelow);
  if (frozen) {
    return {
      value: setPoint + frozenMargin,
      source: 'set-point',
      cite: 'set point and 10 °F, common practice',
    };
  }
  if (setPoint < coldHoldingLimit) {
    return {
      value: coldHoldingLimit,
      source: 'food',
      cite: 'FDA Food Code 3-501.16(A)(2), a limit for food and not for air',
    };
  }
  return { value: setPoint + mediumMargin, source: 'set-point', cite: 'set point and 8 °F, common practice' };
}

/**
 * The published cold-holding limit, where it speaks of this circuit at all: medium temperature, with a set point under
 * it. Null elsewhere. It is a limit for food, held against air as a cue.
 *
 * @param setPoint usual set point, NaN where unknown
 */
export function coldHolding(
  circuit: Circuit,
  group: SuctionGroup | null,
  setPoint: Celsius,
): AirLimit | null {
  const published = airLimit({ ...circuit, limits: null }, group, setPoint);
  return published?.source === 'food' ? published : null;
}

/**
 * The level at which warm air of this circuit must be looked at now: the alarm limit in force, or the cold-holding
 * limit where that is lower and the set point of a medium-temperature case stands clearly below it (an alarm may be
 * set wider); with neither, `airLimit`.
 *
 * @param setPoint usual set point, NaN where unknown
 */
export function actionLimit(
  circuit: Circuit,
  group: SuctionGroup | null,
  setPoint: Celsius,
): AirLimit | null {
  const limit = airLimit(circuit, group, setPoint);
  if (limit?.source !== 'site') return limit;
  const food = coldHolding(circuit, group, setPoint);
  const isClearlyBelow = setPoint <= coldHoldingLimit - coldHoldingClearance;
  return food !== null && isClearlyBelow && food.value < limit.value ? food : limit;
}
