import { samplesIn, stepMinutes } from '../../model/grid.ts';
import { BinnedValues } from '../../signals/binned-values.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import type { SuperheatSeries } from './series.ts';
import { settings } from './settings.ts';

export interface SuperheatDays {
  /** Median of the day's settled feeding, K; NaN where there was too little of it. */
  readonly median: Float64Array;
  /** The same while a valve that regulates has stood open by `openFrom` for `feedingMinutes`; as `median` for one that is open or shut. */
  readonly open: Float64Array;
  /** p10 to p90 of the same samples, K. */
  readonly swing: Float64Array;
  /** Median second difference from reading to reading, K: large only where it swings within minutes. */
  readonly roughness: Float64Array;
}

export function superheatDays(
  series: SuperheatSeries,
  settled: Uint8Array,
  { circuit, log }: CircuitSignals,
): SuperheatDays {
  const opening = circuit.valve?.quantity === 'fraction' ? circuit.valve.values : null;
  const count = log.calendar.days.length;
  const days = {
    median: new Float64Array(count).fill(Number.NaN),
    open: new Float64Array(count).fill(Number.NaN),
    swing: new Float64Array(count).fill(Number.NaN),
    roughness: new Float64Array(count).fill(Number.NaN),
  };
  const wait = samplesIn(log.grid, settings.feedingMinutes.value);
  const bends = new BinnedValues(0.05, 0, 80);
  const values = new BinnedValues(Math.max(0.05, series.record.resolution), -60, 80);
  const whileOpen = new BinnedValues(Math.max(0.05, series.record.resolution), -60, 80);
  log.calendar.days.forEach((day, d) => {
    values.clear();
    whileOpen.clear();
    bends.clear();
    let wide = 0;
    for (let i = day.from; i < day.to; i++) {
      if (opening !== null) wide = opening[i]! >= settings.openFrom.value ? wide + 1 : 0;
      if (settled[i] === 0) continue;
      const value = series.at(i);
      if (Number.isNaN(value)) continue;
      values.add(value);
      if (wide > wait) whileOpen.add(value);
      if (settled[i + 1] === 0 || settled[i + 2] === 0) continue;
      const bend = Math.abs(series.at(i + 2) - 2 * series.at(i + 1) + value);
      if (!Number.isNaN(bend)) bends.add(bend);
    }
    const isEnough = ({ total }: BinnedValues) =>
      total * stepMinutes(log.grid) >= settings.fewestMinutes.value;
    if (!isEnough(values)) return;
    days.median[d] = values.quantile(0.5);
    if (opening === null) days.open[d] = days.median[d]!;
    else if (isEnough(whileOpen)) days.open[d] = whileOpen.quantile(0.5);
    days.roughness[d] = bends.quantile(0.5);
    days.swing[d] = values.quantile(0.9) - values.quantile(0.1);
  });
  return days;
}
