import { median } from '../maths/median.ts';
import { type AirLimit, actionLimit, airLimit, coldHolding } from '../model/air-limit.ts';
import type { SuctionGroup } from '../model/log.ts';
import type { CircuitSignals } from '../signals/types.ts';
import type { Celsius } from '../units/quantities.ts';
import { type Exposure, exposureAbove, type SampleRange } from './exposure.ts';
import { type LagView, lagViews } from './lag-view.ts';
import { lagMinutes } from './settings.ts';

export interface ProbeExposure {
  readonly point: string;
  /** Against the limit of the circuit. */
  readonly exposure: Exposure;
  /** Against the published cold-holding limit; null where that does not speak of the circuit. */
  readonly coldHolding: Exposure | null;
  readonly lags: readonly LagView[];
}

/** Exposure is a matter of each probe, never of an average, which hides the warm end. */
export interface CircuitExposure {
  readonly circuit: string;
  readonly limit: AirLimit;
  /** The published cold-holding limit, which an alarm may be set wider than; null where it does not speak of the circuit. */
  readonly coldHolding: AirLimit | null;
  /** One entry a usable probe, in the circuit's order. */
  readonly probes: readonly ProbeExposure[];
}

/** The level that this circuit's air is held against; null without set point and limit. */
export function limitOf(signals: CircuitSignals): AirLimit | null {
  return airLimit(signals.circuit, groupOf(signals), median(signals.setPoint));
}

/** The level at which its air must be looked at now: the lower one of its own limit and the published one. */
export function actionLimitOf(signals: CircuitSignals): AirLimit | null {
  return actionLimit(signals.circuit, groupOf(signals), median(signals.setPoint));
}

function groupOf({ log, circuit }: CircuitSignals): SuctionGroup | null {
  return log.suctionGroups.find(({ id }) => id === circuit.suctionGroup) ?? null;
}

/** Null where there is no limit to hold the air against. */
export function circuitExposure(
  signals: CircuitSignals,
  range: SampleRange = { from: 0, to: signals.log.grid.count },
): CircuitExposure | null {
  const limit = limitOf(signals);
  if (limit === null) return null;
  const { circuit, phase, usable, log } = signals;
  const published = coldHolding(circuit, groupOf(signals), median(signals.setPoint));
  const probes = circuit.probes
    .filter((_, i) => usable[i])
    .map(({ point, record }): ProbeExposure => {
      const above = (level: Celsius) => exposureAbove(record.values, phase, level, log.grid, range);
      const exposure = above(limit.value);
      return {
        point,
        exposure,
        coldHolding:
          published === null || published.value === limit.value
            ? published && exposure
            : above(published.value),
        lags: lagViews(record.values, limit.value, lagMinutes, log.grid, range),
      };
    });
  return { circuit: circuit.id, limit, coldHolding: published, probes };
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
