import { samplesIn, stepMinutes } from '../../model/grid.ts';
import { type CircuitSignals, Phase } from '../../signals/types.ts';
import type { Kelvin } from '../../units/quantities.ts';
import type { Span } from './comparison.ts';

const longestLagMinutes = 8;
const longestSpanDays = 4;

/**
 * How alike a probe and the mean of its neighbours cycle in settled air: the largest correlation of their
 * deviations from a one-hour running mean over lags of up to eight minutes, and that lag (positive: the probe
 * is late), with the swing of the neighbours: 2√2 times their root mean square, as of a sine. A lying probe sits in the same air and keeps the shape; a blocked section is smaller and later.
 */
export function cycleLikeness(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
  span: Span,
): { correlation: number; lagMinutes: number; othersSwing: Kelvin } {
  const { grid } = signals.log;
  const { to } = span;
  const from = Math.max(span.from, to - samplesIn(grid, longestSpanDays * 1440));
  const own = signals.circuit.probes[probe]!.record.values.subarray(from, to);
  const others = meanOf(peers.map((peer) => signals.circuit.probes[peer]!.record.values.subarray(from, to)));
  const settled = signals.phase.subarray(from, to);
  const width = samplesIn(grid, 60);
  const a = deviations(own, settled, width);
  const b = deviations(others, settled, width);
  const lags = Math.floor(longestLagMinutes / stepMinutes(grid));
  let best = { correlation: Number.NaN, lagMinutes: 0 };
  for (let lag = -lags; lag <= lags; lag++) {
    const correlation = correlationAt(a, b, lag);
    if (Number.isNaN(best.correlation) || correlation > best.correlation) {
      best = { correlation, lagMinutes: lag * stepMinutes(grid) };
    }
  }
  return { ...best, othersSwing: 2 * Math.SQRT2 * rootMeanSquare(b) };
}

function rootMeanSquare(values: Float64Array): number {
  const known = values.filter(Number.isFinite);
  return Math.sqrt(known.reduce((sum, value) => sum + value * value, 0) / known.length);
}

function meanOf(records: readonly Float64Array[]): Float64Array {
  const mean = new Float64Array(records[0]?.length ?? 0);
  for (const values of records) {
    for (let i = 0; i < mean.length; i++) mean[i] = mean[i]! + values[i]! / records.length;
  }
  return mean;
}

/** Value minus the centred running mean, where the whole hour is settled and known; else NaN. */
function deviations(values: Float64Array, phase: Uint8Array, width: number): Float64Array {
  const result = new Float64Array(values.length).fill(Number.NaN);
  const half = width >> 1;
  let sum = 0;
  let run = 0;
  for (let i = 0; i < values.length; i++) {
    if (phase[i] !== Phase.cooling || !Number.isFinite(values[i]!)) {
      sum = 0;
      run = 0;
      continue;
    }
    sum += values[i]!;
    run++;
    if (run > width) {
      sum -= values[i - width]!;
      run--;
    }
    if (run === width) result[i - half] = values[i - half]! - sum / width;
  }
  return result;
}

function correlationAt(a: Float64Array, b: Float64Array, lag: number): number {
  let products = 0;
  let squaresA = 0;
  let squaresB = 0;
  for (let i = Math.max(0, lag); i < Math.min(a.length, b.length + lag); i++) {
    const x = a[i]!;
    const y = b[i - lag]!;
    if (!(Number.isFinite(x) && Number.isFinite(y))) continue;
    products += x * y;
    squaresA += x * x;
    squaresB += y * y;
  }
  return products / Math.sqrt(squaresA * squaresB);
}
