const gapsRead = 2000;

/**
 * The usual time between two readings of a column, in ms: the median gap between neighbouring readings that
 * hold a value; NaN with fewer than two. Reads a spread sample of long columns.
 */
export function usualInterval(times: Float64Array, values: Float64Array): number {
  const stretches = times.length > gapsRead * 2 ? 5 : 1;
  const gaps: number[] = [];
  for (let stretch = 0; stretch < stretches; stretch++) {
    const from = Math.floor((times.length * stretch) / stretches);
    const enough = ((stretch + 1) * gapsRead) / stretches;
    let previous = Number.NaN;
    for (let index = from; index < times.length && gaps.length < enough; index++) {
      if (Number.isNaN(values[index]!)) continue;
      const gap = times[index]! - previous;
      if (gap > 0) gaps.push(gap);
      previous = times[index]!;
    }
  }
  if (gaps.length === 0) return Number.NaN;
  gaps.sort((a, b) => a - b);
  return gaps[(gaps.length - 1) >> 1]!;
}
