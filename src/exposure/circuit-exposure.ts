import { median } from '../maths/median.ts';
import { type AirLimit, airLimit } from '../model/air-limit.ts';
import type { CircuitSignals } from '../signals/types.ts';
import { type Exposure, exposureAbove, type SampleRange } from './exposure.ts';
import { type LagView, lagViews } from './lag-view.ts';
import { lagMinutes } from './settings.ts';

export interface ProbeExposure {
  readonly point: string;
  readonly exposure: Exposure;
  readonly lags: readonly LagView[];
}

/** Exposure is a matter of each probe, never of an average, which hides the warm end. */
export interface CircuitExposure {
  readonly circuit: string;
  readonly limit: AirLimit;
  /** One entry a usable probe, in the circuit's order. */
  readonly probes: readonly ProbeExposure[];
}

/** The level that this circuit's air is held against; null without set point and limit. */
export function limitOf(signals: CircuitSignals): AirLimit | null {
  const group = signals.log.suctionGroups.find(({ id }) => id === signals.circuit.suctionGroup) ?? null;
  return airLimit(signals.circuit, group, median(signals.setPoint));
}

/** Null where there is no limit to hold the air against. */
export function circuitExposure(
  signals: CircuitSignals,
  range: SampleRange = { from: 0, to: signals.log.grid.count },
): CircuitExposure | null {
  const limit = limitOf(signals);
  if (limit === null) return null;
  const { circuit, phase, usable, log } = signals;
  const probes = circuit.probes
    .filter((_, i) => usable[i])
    .map(({ point, record }) => ({
      point,
      exposure: exposureAbove(record.values, phase, limit.value, log.grid, range),
      lags: lagViews(record.values, limit.value, lagMinutes, log.grid, range),
    }));
  return { circuit: circuit.id, limit, probes };
}

/** The probe with the most kelvin hours above the limit, the longer time above it where those are equal. */
export function worstProbe({ probes }: CircuitExposure): ProbeExposure | null {
  return probes.reduce<ProbeExposure | null>((worst, probe) => {
    if (worst === null) return probe;
    const more =
      probe.exposure.kelvinHours - worst.exposure.kelvinHours ||
      probe.exposure.aboveMinutes - worst.exposure.aboveMinutes;
    return more > 0 ? probe : worst;
  }, null);
}
