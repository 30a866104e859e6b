const gapsRead = 1000;

/**
 * The usual time between two readings of a column, in ms: the median gap between neighbouring readings that
 * hold a value; NaN with fewer than two. Reads a spread sample of long columns.
 */
export function usualInterval(times: Float64Array, values: Float64Array): number {
  const stretches = times.length > gapsRead * 2 ? 5 : 1;
  const gaps = new Float64Array(stretches === 1 ? times.length : gapsRead);
  let count = 0;
  for (let stretch = 0; stretch < stretches; stretch++) {
    const from = Math.floor((times.length * stretch) / stretches);
    const enough = Math.floor(((stretch + 1) * gaps.length) / stretches);
    let previous = Number.NaN;
    for (let index = from; index < times.length && count < enough; index++) {
      if (Number.isNaN(values[index]!)) continue;
      const gap = times[index]! - previous;
      if (gap > 0) gaps[count++] = gap;
      previous = times[index]!;
    }
  }
  if (count === 0) return Number.NaN;
  return gaps.subarray(0, count).sort()[(count - 1) >> 1]!;
}
