/**
 * Whether the readings of a point were written on change: their steps are irregular and a value hardly ever
 * follows itself. Ascending `times`, `values` without gaps.
 */
export function loggingKind(times: Float64Array, values: Float64Array): 'sampled' | 'change-of-value' {
  const steps = new Map<number, number>();
  let readings = 0;
  let repeats = 0;
  let before = Number.NaN;
  let timeBefore = Number.NaN;
  for (let at = 0; at < times.length; at++) {
    const value = values[at]!;
    if (Number.isNaN(value)) continue;
    if (readings > 0) {
      const step = Math.round((times[at]! - timeBefore) / 1000);
      if (steps.size < 5000 || steps.has(step)) steps.set(step, (steps.get(step) ?? 0) + 1);
      if (value === before) repeats++;
    }
    before = value;
    timeBefore = times[at]!;
    readings++;
  }
  if (readings < 3) return 'sampled';
  let most = 0;
  for (const count of steps.values()) if (count > most) most = count;
  if (most >= 0.75 * (readings - 1) || repeats > 0.02 * (readings - 1)) return 'sampled';
  const lengths = [...steps.keys()].sort((a, b) => a - b);
  const low = lengths[Math.floor(lengths.length * 0.1)]!;
  const high = lengths[Math.floor(lengths.length * 0.9)]!;
  return high > 3 * Math.max(low, 1) ? 'change-of-value' : 'sampled';
}
