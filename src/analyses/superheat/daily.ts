import { stepMinutes } from '../../model/grid.ts';
import { BinnedValues } from '../../signals/binned-values.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import type { SuperheatSeries } from './series.ts';
import { settings } from './settings.ts';

export interface SuperheatDays {
  /** Median of the day's settled feeding, K; NaN where there was too little of it. */
  readonly median: Float64Array;
  /** p10 to p90 of the same samples, K. */
  readonly swing: Float64Array;
  /** Median second difference from reading to reading, K: large only where it swings within minutes. */
  readonly roughness: Float64Array;
}

export function superheatDays(
  series: SuperheatSeries,
  settled: Uint8Array,
  { log }: CircuitSignals,
): SuperheatDays {
  const count = log.calendar.days.length;
  const days = {
    median: new Float64Array(count).fill(Number.NaN),
    swing: new Float64Array(count).fill(Number.NaN),
    roughness: new Float64Array(count).fill(Number.NaN),
  };
  const bends = new BinnedValues(0.05, 0, 80);
  const values = new BinnedValues(Math.max(0.05, series.record.resolution), -60, 80);
  log.calendar.days.forEach((day, d) => {
    values.clear();
    bends.clear();
    for (let i = day.from; i < day.to; i++) {
      if (settled[i] === 0) continue;
      const value = series.at(i);
      if (Number.isNaN(value)) continue;
      values.add(value);
      if (settled[i + 1] === 0 || settled[i + 2] === 0) continue;
      const bend = Math.abs(series.at(i + 2) - 2 * series.at(i + 1) + value);
      if (!Number.isNaN(bend)) bends.add(bend);
    }
    if (values.total * stepMinutes(log.grid) < settings.fewestMinutes.value) return;
    days.median[d] = values.quantile(0.5);
    days.roughness[d] = bends.quantile(0.5);
    days.swing[d] = values.quantile(0.9) - values.quantile(0.1);
  });
  return days;
}
