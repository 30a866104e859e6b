import type { Circuit } from '../model/log.ts';
import type { Celsius, Kelvin, Minutes } from '../units/quantities.ts';

/** What an alarm listens to. The average is over the probes that hold a reading. */
export type AlarmInput = 'average' | 'warmest' | { readonly probe: string };

/** A high-temperature alarm, as any controller has one. */
export interface AlarmRule {
  readonly limit: Celsius;
  /** How long the input must stand above the limit without a break. */
  readonly delayMinutes: Minutes;
  /** The alarm goes back when the input has come down to this much under the limit. */
  readonly hysteresis: Kelvin;
  readonly input: AlarmInput;
  /** It does not listen in a defrost and for so long after one; null: it always listens. */
  readonly lockOutAfterMinutes: Minutes | null;
  /** Whether a lock-out stops the running delay or starts it from nothing. */
  readonly timerInLockOut: 'paused' | 'reset';
}

/** Where nobody said otherwise: 2 °F and half an hour after a defrost. Common practice, no source. */
export const usualAlarm = {
  hysteresis: 10 / 9,
  lockOutAfterMinutes: 30,
  timerInLockOut: 'reset',
} as const satisfies Partial<AlarmRule>;

/** Air limits of a circuit without an alarm of its own. Common practice, no source: 44 °F, or 8 °F over the set point. */
const commonLimit: Celsius = 20 / 3;
const commonMargin: Kelvin = 40 / 9;
const frozenMargin: Kelvin = 50 / 9;
const frozenBelow: Celsius = -10;
export const commonDelayMinutes: Minutes = 60;

export interface AlarmInForce {
  readonly rule: AlarmRule;
  /** Whether the site file gave limit and delay, or common practice had to stand in. */
  readonly source: 'site' | 'common-practice';
}

/** The alarm of the site file, else a usual one on what the controller steers by; null without a set point. */
export function alarmInForce(circuit: Circuit, setPoint: Celsius): AlarmInForce | null {
  const input = circuit.controls === 'coldest' ? 'average' : circuit.controls;
  if (circuit.limits !== null) {
    const { high, minutes } = circuit.limits;
    return { rule: { ...usualAlarm, limit: high, delayMinutes: minutes, input }, source: 'site' };
  }
  if (!Number.isFinite(setPoint)) return null;
  const limit =
    setPoint < frozenBelow ? setPoint + frozenMargin : Math.max(commonLimit, setPoint + commonMargin);
  return {
    rule: { ...usualAlarm, limit, delayMinutes: commonDelayMinutes, input },
    source: 'common-practice',
  };
}
