import type { AlarmRule } from '../../src/alarm-replay/alarm-rule.ts';
import type { Trip } from '../../src/alarm-replay/replay.ts';

type Minute = { readonly value: number; readonly locked: boolean };

/**
 * The same alarm said another way, slowly: at every minute the whole past is read backwards to see whether the
 * alarm has to come. Minutes without a reading are skipped; a lock-out is skipped or is the end of the past.
 */
export function naiveTrips(
  history: readonly Minute[],
  rule: Omit<AlarmRule, 'input' | 'lockOutAfterMinutes'>,
): Trip[] {
  const trips: Trip[] = [];
  for (let now = 0; now < history.length; now++) {
    const last = trips.at(-1);
    const { value, locked } = history[now]!;
    if (last !== undefined && last.to === null) {
      if (value <= rule.limit - rule.hysteresis) trips[trips.length - 1] = { from: last.from, to: now };
      else continue;
    }
    if (locked || Number.isNaN(value)) continue;
    const resumed = trips.at(-1)?.to ?? 0;
    if (minutesAbove(history.slice(resumed, now + 1), rule) >= rule.delayMinutes)
      trips.push({ from: now, to: null });
  }
  return trips;
}

/** Minutes since the first of the unbroken readings above the limit that end with the last one. */
function minutesAbove(past: readonly Minute[], rule: Pick<AlarmRule, 'limit' | 'timerInLockOut'>): number {
  let readings = 0;
  for (const { value, locked } of past.toReversed()) {
    if (locked && rule.timerInLockOut === 'reset') break;
    if (locked || Number.isNaN(value)) continue;
    if (value <= rule.limit) break;
    readings++;
  }
  return readings === 0 ? -1 : readings - 1;
}
