import type { Calendar } from '../model/grid.ts';
import type { ClockWindows } from './clock-windows.ts';
import type { Stretch } from './defrost/stretch.ts';
import { Phase } from './types.ts';

/** Some settled air of one day, or what is not known to be otherwise. */
export interface SettledPart {
  readonly stretches: readonly Stretch[];
  /** Samples in them. */
  readonly samples: number;
}

/** The settled air of one local day: by night, in the trading day, and in the rest of it. */
export interface SettledDay {
  readonly night: SettledPart;
  readonly trading: SettledPart;
  readonly rest: SettledPart;
}

/** Which samples count for the daily figures of a circuit's probes. */
export interface SettledWindows {
  /** One entry a day of the calendar. */
  readonly days: readonly SettledDay[];
  /** The same by the sample: 1 where it counts, else 0. */
  readonly flags: Uint8Array;
}

/** @param windows one entry a day of the calendar */
export function settledWindows(
  phase: Uint8Array,
  windows: readonly ClockWindows[],
  calendar: Calendar,
): SettledWindows {
  const days = calendar.days.map(({ from, to }, d) => settledDay(phase, from, to, windows[d]!));
  const flags = new Uint8Array(phase.length);
  for (const { night, trading, rest } of days) {
    for (const part of [night, trading, rest])
      for (const { from, to } of part.stretches) flags.fill(1, from, to);
  }
  return { days, flags };
}

/** The trading day follows the night; a day of the log that lacks one of them has it empty, its end before its start. */
function settledDay(
  phase: Uint8Array,
  from: number,
  to: number,
  { night, trading }: ClockWindows,
): SettledDay {
  const rest: Stretch[] = [];
  let at = from;
  for (const window of [night, trading]) {
    if (window.to <= window.from) continue;
    addSettled(phase, at, window.from, rest);
    at = window.to;
  }
  addSettled(phase, at, to, rest);
  return {
    night: partOf(addSettled(phase, night.from, night.to, [])),
    trading: partOf(addSettled(phase, trading.from, trading.to, [])),
    rest: partOf(rest),
  };
}

function partOf(stretches: readonly Stretch[]): SettledPart {
  let samples = 0;
  for (const { from, to } of stretches) samples += to - from;
  return { stretches, samples };
}

/** Adds the settled stretches from one sample to another to `found`. */
function addSettled(phase: Uint8Array, from: number, to: number, found: Stretch[]): Stretch[] {
  let since = -1;
  for (let i = from; i < to; i++) {
    const isSettled = phase[i] === Phase.cooling || phase[i] === Phase.unknown;
    if (isSettled === since >= 0) continue;
    if (!isSettled) found.push({ from: since, to: i });
    since = isSettled ? i : -1;
  }
  if (since >= 0) found.push({ from: since, to });
  return found;
}
