import { median } from './median.ts';

/**
 * Smooth curve through points by local lines with tricube weights and robustness rounds: Cleveland, J. Am. Stat. Assoc. 74
 * (1979) 829. `times` ascending; all values finite. Every `span` · n nearest points carry a line; fits are made at points
 * more than `skip` apart and joined by straight lines, as in his LOWESS of 1981 and R's `lowess`. O(n² · span).
 */
export function lowess(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  {
    span = 2 / 3,
    rounds = 3,
    skip = 0.01 * ((times[times.length - 1] ?? 0) - (times[0] ?? 0)),
  }: { span?: number; rounds?: number; skip?: number } = {},
): Float64Array {
  const n = values.length;
  if (n < 2) return Float64Array.from(values);
  const neighbours = Math.max(2, Math.min(n, Math.floor(span * n + 1e-7)));
  const robustness = new Float64Array(n).fill(1);
  let fitted = smoothOnce(times, values, neighbours, skip, robustness);
  for (let round = 0; round < rounds; round++) {
    const sizes = fitted.map((fit, i) => Math.abs(values[i]! - fit));
    const limit = 6 * median(sizes);
    if (limit < 1e-7 * (sizes.reduce((sum, size) => sum + size, 0) / n)) break;
    for (let i = 0; i < n; i++) {
      const share = sizes[i]! / limit;
      robustness[i] = share <= 0.001 ? 1 : share > 0.999 ? 0 : (1 - share ** 2) ** 2;
    }
    fitted = smoothOnce(times, values, neighbours, skip, robustness);
  }
  return fitted;
}

function smoothOnce(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  neighbours: number,
  skip: number,
  robustness: Float64Array,
): Float64Array {
  const n = values.length;
  const fitted = new Float64Array(n);
  let left = 0;
  let last = -1;
  for (let i = 0; i < n; ) {
    while (left + neighbours < n && times[i]! - times[left]! > times[left + neighbours]! - times[i]!) left++;
    fitted[i] = localFit(times, values, times[i]!, left, neighbours, robustness) ?? values[i]!;
    for (let j = last + 1; j < i; j++) {
      const share = (times[j]! - times[last]!) / (times[i]! - times[last]!);
      fitted[j] = fitted[last]! + share * (fitted[i]! - fitted[last]!);
    }
    last = i;
    const reach = times[last]! + skip;
    let next = last + 1;
    while (next < n && times[next]! <= reach) {
      if (times[next] === times[last]) {
        fitted[next] = fitted[last]!;
        last = next;
      }
      next++;
    }
    if (last >= n - 1) break;
    i = Math.max(last + 1, next - 1);
  }
  return fitted;
}

function localFit(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  at: number,
  left: number,
  neighbours: number,
  robustness: Float64Array,
): number | null {
  const n = values.length;
  const radius = Math.max(at - times[left]!, times[left + neighbours - 1]! - at);
  const weights: number[] = [];
  let total = 0;
  for (let j = left; j < n; j++) {
    const apart = Math.abs(times[j]! - at);
    if (apart > 0.999 * radius && times[j]! > at) break;
    const near = apart <= 0.999 * radius;
    const tricube = apart <= 0.001 * radius ? 1 : (1 - (apart / radius) ** 3) ** 3;
    const weight = near ? tricube * robustness[j]! : 0;
    weights.push(weight);
    total += weight;
  }
  if (total <= 0) return null;
  let centre = 0;
  weights.forEach((weight, k) => {
    centre += (weight / total) * times[left + k]!;
  });
  let spread = 0;
  weights.forEach((weight, k) => {
    spread += (weight / total) * (times[left + k]! - centre) ** 2;
  });
  const range = times[n - 1]! - times[0]!;
  const tilt = Math.sqrt(spread) > 0.001 * range ? (at - centre) / spread : 0;
  let fit = 0;
  weights.forEach((weight, k) => {
    fit += (weight / total) * (1 + tilt * (times[left + k]! - centre)) * values[left + k]!;
  });
  return fit;
}
