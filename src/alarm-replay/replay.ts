import type { Minutes } from '../units/quantities.ts';
import type { AlarmRule } from './alarm-rule.ts';

export interface Trip {
  /** Sample at which the alarm came, and at which it went; null while it stands at the end. */
  readonly from: number;
  readonly to: number | null;
}

export interface Replay {
  readonly trips: readonly Trip[];
  /** Samples at which the alarm could not have come: locked out, or nothing known. */
  readonly blindSamples: number;
}

type Timing = Pick<AlarmRule, 'limit' | 'delayMinutes' | 'hysteresis' | 'timerInLockOut'>;

/**
 * Runs the alarm over a history, one sample after the other. The delay runs from the first reading above the limit
 * and is up when that is `delayMinutes` ago, every reading since then above it too. A missing reading stops the
 * delay where it is; a lock-out stops or clears it. A standing alarm goes back at the first reading at or under
 * limit − hysteresis, locked out or not.
 */
export function replayAlarm(
  input: Float64Array,
  locked: Uint8Array,
  rule: Timing,
  stepMinutes: Minutes,
): Replay {
  const trips: { from: number; to: number | null }[] = [];
  let blindSamples = 0;
  let elapsed: Minutes | null = null;
  let standing = false;
  for (let i = 0; i < input.length; i++) {
    const value = input[i]!;
    const isUnknown = Number.isNaN(value);
    const isLocked = locked[i] === 1;
    if (isUnknown || isLocked) blindSamples++;
    if (standing) {
      if (isUnknown || value > rule.limit - rule.hysteresis) continue;
      trips.at(-1)!.to = i;
      standing = false;
      elapsed = null;
    }
    if (isLocked) {
      if (rule.timerInLockOut === 'reset') elapsed = null;
      continue;
    }
    if (isUnknown) continue;
    if (value <= rule.limit) {
      elapsed = null;
      continue;
    }
    elapsed = elapsed === null ? 0 : elapsed + stepMinutes;
    if (elapsed < rule.delayMinutes) continue;
    trips.push({ from: i, to: null });
    standing = true;
  }
  return { trips, blindSamples };
}
