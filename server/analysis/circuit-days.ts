import { shownAir } from '../../src/figures/shown-air.ts';
import type { Log } from '../../src/model/log.ts';
import { siteScale } from '../../src/reporting/site-scale.ts';
import type { CircuitSignals } from '../../src/signals/types.ts';
import { rounded } from './rounded.ts';

/** Daily figures of one circuit in the site's units, for the small picture in the list and the table under the plot. */
export interface CircuitDays {
  readonly id: string;
  readonly name: string;
  readonly suctionGroup: string | null;
  readonly setPoint: readonly (number | null)[];
  readonly probes: readonly {
    readonly point: string;
    /** Medians of settled air, or of a circuit that stood off (`shownAir`). */
    readonly median: readonly (number | null)[];
    /** Median minutes to recover after a defrost; the minutes watched stand in where it did not. */
    readonly recoveryMinutes: readonly (number | null)[];
  }[];
  /** Share of settled time with the valve feeding, 0 to 1. */
  readonly duty: readonly (number | null)[];
  /** Defrosts that began on the day; null where none can be told. */
  readonly defrosts: readonly (number | null)[];
}

function defrostsADay({ defrosts, defrostSource }: CircuitSignals, log: Log): (number | null)[] {
  return log.calendar.days.map(({ from, to }) => {
    if (defrostSource === 'none') return null;
    return defrosts.filter((window) => window.from >= from && window.from < to).length;
  });
}

export function circuitDays(signals: CircuitSignals, log: Log): CircuitDays {
  const { circuit } = signals;
  const { temperature } = siteScale(log);
  return {
    id: circuit.id,
    name: circuit.name,
    suctionGroup: circuit.suctionGroup,
    setPoint: rounded(signals.setPoint, 2, temperature),
    probes: circuit.probes.map(({ point }, index) => ({
      point,
      median: rounded(shownAir(signals, index), 2, temperature),
      recoveryMinutes: rounded(signals.probes[index]!.recovery, 0),
    })),
    duty: rounded(signals.duty, 3),
    defrosts: defrostsADay(signals, log),
  };
}
