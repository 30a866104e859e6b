export interface CusumAlarm {
  readonly direction: 'up' | 'down';
  /** First sample at which the sum stood above the limit. */
  readonly at: number;
  /** First sample of the run that led there: the one after the sum was last 0. */
  readonly onset: number;
}

export interface Cusum {
  readonly up: Float64Array;
  readonly down: Float64Array;
  /** One for each time a sum rose from 0 above the limit, in order of `at`. */
  readonly alarms: readonly CusumAlarm[];
}

/**
 * Two-sided tabular cumulative sum (Page, Biometrika 41 (1954) 100; NIST Handbook 6.3.2.3) of deviations from the
 * target, in units of the noise: up = max(0, up + z − allowance), down alike; an alarm above `limit`. Sums are not
 * reset by an alarm. A missing value leaves both as they are.
 */
export function cusum(deviations: ArrayLike<number>, allowance: number, limit: number): Cusum {
  const up = oneSided(deviations, 1, allowance, limit);
  const down = oneSided(deviations, -1, allowance, limit);
  const alarms = [
    ...up.alarms.map((alarm) => ({ direction: 'up' as const, ...alarm })),
    ...down.alarms.map((alarm) => ({ direction: 'down' as const, ...alarm })),
  ].sort((a, b) => a.at - b.at);
  return { up: up.sums, down: down.sums, alarms };
}

function oneSided(
  deviations: ArrayLike<number>,
  sign: 1 | -1,
  allowance: number,
  limit: number,
): { sums: Float64Array; alarms: { at: number; onset: number }[] } {
  const sums = new Float64Array(deviations.length);
  const alarms: { at: number; onset: number }[] = [];
  let sum = 0;
  let onset = 0;
  let ringing = false;
  for (let i = 0; i < deviations.length; i++) {
    const deviation = deviations[i]!;
    if (Number.isFinite(deviation)) {
      if (sum === 0) onset = i;
      sum = Math.max(0, sum + sign * deviation - allowance);
      if (sum === 0) ringing = false;
      else if (sum > limit && !ringing) {
        ringing = true;
        alarms.push({ at: i, onset });
      }
    }
    sums[i] = sum;
  }
  return { sums, alarms };
}
