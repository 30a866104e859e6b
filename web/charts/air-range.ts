import type { CircuitSeries } from '../json.ts';

/** Lowest and highest of what the air panel shows, with some air around it; null where there is nothing. */
export function airRange(series: CircuitSeries, settled: boolean): readonly [number, number] | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const take = (values: readonly (number | null)[]): void => {
    for (const value of values) {
      if (value === null) continue;
      if (value < low) low = value;
      if (value > high) high = value;
    }
  };
  if (settled) for (const probe of series.settled.probes) take([...probe.low, ...probe.high]);
  else for (const { line } of series.probes) take(line.values);
  take(series.setPoint?.values ?? []);
  if (low > high) return null;
  // The limit belongs in the picture unless it is so far off that it would press the lines flat.
  if (series.limit !== null && series.limit - high < 1.5 * (high - low)) take([series.limit]);
  const margin = Math.max(0.5, 0.06 * (high - low));
  return [low - margin, high + margin];
}
