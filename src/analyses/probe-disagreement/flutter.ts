import { median } from '../../maths/median.ts';
import { type CircuitSignals, Phase } from '../../signals/types.ts';
import { settings } from './settings.ts';

export interface Flutter {
  /** First day (position in the calendar) on which the probe fluttered, and the day after the last. */
  readonly firstDay: number;
  readonly lastDay: number;
  /** Median over the fluttering days: scatter in K, and over that of the neighbours. */
  readonly scatter: number;
  readonly ratio: number;
}

const leastDays = 2;
const leastSamples = 40;

/**
 * Days on which a probe jumps from sample to sample as air with its thermal inertia cannot. Scatter is the mean
 * absolute second difference of settled samples, which a straight rise or fall leaves at zero.
 */
export function flutter(signals: CircuitSignals, probe: number, peers: readonly number[]): Flutter | null {
  const own = dailyScatter(signals, probe);
  const others = peers.map((peer) => dailyScatter(signals, peer));
  const days: number[] = [];
  const ratios: number[] = [];
  for (let day = 0; day < own.length; day++) {
    const usual = median(others.map((other) => other[day]!));
    const floor = Math.max(usual, settings.flutterLeast.value / settings.flutterFactor.value);
    const ratio = own[day]! / floor;
    if (!(ratio >= settings.flutterFactor.value)) continue;
    days.push(day);
    ratios.push(ratio);
  }
  if (days.length < leastDays) return null;
  return {
    firstDay: days[0]!,
    lastDay: days.at(-1)! + 1,
    scatter: median(days.map((day) => own[day]!)),
    ratio: median(ratios),
  };
}

function dailyScatter(signals: CircuitSignals, probe: number): Float64Array {
  const { values } = signals.circuit.probes[probe]!.record;
  const { days } = signals.log.calendar;
  return Float64Array.from(days, ({ from, to }) => {
    let sum = 0;
    let count = 0;
    for (let i = Math.max(1, from); i < Math.min(to, values.length - 1); i++) {
      if (signals.phase[i] !== Phase.cooling) continue;
      const second = Math.abs(values[i]! - (values[i - 1]! + values[i + 1]!) / 2);
      if (Number.isNaN(second)) continue;
      sum += second;
      count++;
    }
    return count >= leastSamples ? sum / count : Number.NaN;
  });
}
