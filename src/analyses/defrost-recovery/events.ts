import { median } from '../../maths/median.ts';
import { dayAt, stepMinutes } from '../../model/grid.ts';
import type { DefrostPlan } from '../../model/log.ts';
import type { CircuitSignals, DefrostWindow, ProbeDefrost } from '../../signals/types.ts';
import type { Celsius, Kelvin, Minutes } from '../../units/quantities.ts';

/** One complete defrost of a circuit, its usable probes taken together. */
export interface DefrostEvent {
  readonly at: number;
  readonly day: number;
  readonly minutes: Minutes;
  /** Median over the probes of the peak above the level before. */
  readonly rise: Kelvin;
  /** Median over the probes of the peak itself. */
  readonly peak: Celsius;
  /** Median over the probes of the fastest rise, K/min. */
  readonly rate: number;
  /** Median over the probes; the watched minutes stand in where it was not seen. */
  readonly recovery: Minutes;
  /** At least half of the probes were seen to recover. */
  readonly recovered: boolean;
}

export function completeDefrosts(signals: CircuitSignals): DefrostWindow[] {
  return signals.defrosts.filter((window) => window.complete);
}

export function defrostEvents(signals: CircuitSignals): DefrostEvent[] {
  const { grid, calendar } = signals.log;
  return completeDefrosts(signals).map((window) => {
    const probes = usableOf(window, signals);
    return {
      at: window.from,
      day: dayAt(calendar, window.from),
      minutes: (window.to - window.from) * stepMinutes(grid),
      rise: median(probes.map((probe) => probe.peak - probe.before)),
      peak: median(probes.map((probe) => probe.peak)),
      rate: median(probes.map((probe) => probe.riseRate)),
      recovery: median(probes.map(minutesToRecover)),
      recovered: 2 * probes.filter(isRecovered).length >= probes.length,
    };
  });
}

/**
 * Whether windows are as long as the defrosts were: by a status, or, while a coil is heated, by the valve that stays
 * shut for it. A rest of the valve before an off-cycle defrost looks no different from it.
 */
export function lengthsAreKnown({ circuit, defrostSource }: CircuitSignals): boolean {
  if (defrostSource === 'status') return true;
  return defrostSource === 'shape' && circuit.valve !== null && isHeated(circuit.defrost);
}

export function isHeated({ kind }: DefrostPlan): boolean {
  return kind === 'electric' || kind === 'hot-gas';
}

export function usableOf(window: DefrostWindow, signals: CircuitSignals): ProbeDefrost[] {
  return window.probes.filter((_, i) => signals.usable[i]);
}

export const isRecovered = (probe: ProbeDefrost): boolean => probe.recoveryMinutes !== null;
export const minutesToRecover = (probe: ProbeDefrost): Minutes =>
  probe.recoveryMinutes ?? probe.watchedMinutes;
