import {
  type CircuitExposure,
  circuitExposure,
  type ProbeExposure,
} from '../../exposure/circuit-exposure.ts';
import { timeAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { formatShare, formatTemperature } from '../../units/display.ts';
import { formatNumber } from '../../units/format-number.ts';
import { minutesText } from '../audit/cell-text.ts';
import { coldHoldingNote, coldHoldingTitle, limitName } from '../limit-words.ts';
import { dayAndTimeText } from '../local-time.ts';
import { siteScale } from '../site-scale.ts';

/** How long and how far the air of each usable probe stood above the limit, in words. */
export interface AirAbove {
  /** `44.9 °F, the alarm limit in force`. */
  readonly limit: string;
  /** Where the limit comes from, and what it cannot say. */
  readonly note: string;
  readonly degreeHoursUnit: string;
  readonly rows: readonly {
    readonly probe: string;
    readonly above: string;
    readonly settled: string;
    /** Share of the time above in defrosts and the recoveries after them; empty without any. */
    readonly inDefrost: string;
    readonly degreeHours: string;
    readonly longest: string;
    readonly longestFrom: string;
    readonly unknown: string;
  }[];
  /** The same against the published cold-holding limit, where that speaks of the circuit and is another one. */
  readonly coldHolding: {
    readonly limit: string;
    readonly note: string;
    readonly rows: readonly {
      readonly probe: string;
      readonly above: string;
      readonly settled: string;
      readonly degreeHours: string;
      readonly longest: string;
    }[];
  } | null;
}

/** Null where neither a limit nor a set point is known. */
export function airAbove(signals: CircuitSignals): AirAbove | null {
  const exposure = circuitExposure(signals);
  if (exposure === null) return null;
  const { log } = signals;
  return {
    limit: `${formatTemperature(exposure.limit.value, log.units)}, ${limitName(exposure.limit)}`,
    note: `The limit is ${exposure.limit.cite}. Air is held against it, not food: a calibrated thermometer in the goods and the local code decide. Time without a reading counts as neither.`,
    degreeHoursUnit: `${siteScale(log).temperatureSign}·h`,
    rows: exposure.probes.map((probe) => rowOf(probe, log)),
    coldHolding: coldHoldingOf(exposure, log),
  };
}

function coldHoldingOf({ limit, coldHolding, probes }: CircuitExposure, log: Log): AirAbove['coldHolding'] {
  if (coldHolding === null || coldHolding.value === limit.value) return null;
  return {
    limit: coldHoldingTitle(log),
    note: coldHoldingNote,
    rows: probes.flatMap(({ point, coldHolding: exposure }) => {
      if (exposure === null) return [];
      const { above, settled, degreeHours, longest } = rowOf({ point, exposure }, log);
      return [{ probe: point, above, settled, degreeHours, longest }];
    }),
  };
}

function rowOf(
  { point, exposure }: Pick<ProbeExposure, 'point' | 'exposure'>,
  log: Log,
): AirAbove['rows'][number] {
  const { aboveMinutes, settledMinutes, defrostMinutes, recoveryMinutes, longest } = exposure;
  return {
    probe: point,
    above: minutesText(aboveMinutes),
    settled: minutesText(settledMinutes),
    inDefrost: aboveMinutes > 0 ? formatShare((defrostMinutes + recoveryMinutes) / aboveMinutes) : '',
    degreeHours: formatNumber(siteScale(log).difference(exposure.kelvinHours), 1),
    longest: longest === null ? '' : minutesText(longest.minutes),
    longestFrom: longest === null ? '' : dayAndTimeText(log, timeAt(log.grid, longest.from)),
    unknown: minutesText(exposure.unknownMinutes),
  };
}
