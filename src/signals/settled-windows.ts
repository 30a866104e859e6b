import type { Calendar } from '../model/grid.ts';
import type { ClockWindows } from './clock-windows.ts';
import { Phase } from './types.ts';

/** Bits of a sample: in settled air (or not known to be otherwise), at night, in the trading day. */
export const settled = 1;
export const atNight = 2;
export const byDay = 4;

interface Counts {
  readonly all: number;
  readonly night: number;
  readonly day: number;
}

/** Which samples count for the daily figures of a circuit's probes, and how many of them each day has. */
export interface SettledWindows {
  readonly flags: Uint8Array;
  readonly days: readonly Counts[];
  /** Where the flags of night and trading day stand, one entry a day. */
  readonly clock: readonly ClockWindows[];
}

/** @param windows one entry a day of the calendar */
export function settledWindows(
  phase: Uint8Array,
  windows: readonly ClockWindows[],
  calendar: Calendar,
): SettledWindows {
  const flags = new Uint8Array(phase.length);
  const days = calendar.days.map(({ from, to }, d) => markDay(flags, phase, from, to, windows[d]!));
  return { flags, days, clock: windows };
}

function markDay(
  flags: Uint8Array,
  phase: Uint8Array,
  from: number,
  to: number,
  { night, trading }: ClockWindows,
): Counts {
  const counts = { all: 0, night: 0, day: 0 };
  for (let i = from; i < to; i++) {
    if (phase[i] !== Phase.cooling && phase[i] !== Phase.unknown) continue;
    let flag = settled;
    counts.all++;
    if (i >= night.from && i < night.to) {
      flag |= atNight;
      counts.night++;
    }
    if (i >= trading.from && i < trading.to) {
      flag |= byDay;
      counts.day++;
    }
    flags[i] = flag;
  }
  return counts;
}
