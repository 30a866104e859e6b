import type { Record } from '../../model/record.ts';
import { dewTemperature, knownRefrigerant } from '../../refrigerants/saturation.ts';
import type { CircuitSignals, GroupSignals } from '../../signals/types.ts';

/** Superheat of one evaporator, sample by sample, Kelvin. */
export interface SuperheatSeries {
  readonly record: Record;
  at(sample: number): number;
}

export type SeriesOrReason =
  | { readonly series: readonly SuperheatSeries[] }
  | { readonly reason: string; readonly needs: string };

/** No group has pressures outside 0 to 4000 kPa; the dew point is looked up once for each half kilopascal met. */
const pressureStep = 0.5;

/**
 * The circuit's superheat channel, else coil outlet temperature less the dew point at the suction pressure
 * (absolute, so that the altitude of the store is in it); or why there is none.
 */
export function superheatSeries(signals: CircuitSignals, group: GroupSignals | null): SeriesOrReason {
  const { superheat, coilOut } = signals.circuit;
  if (superheat !== null)
    return { series: [{ record: superheat, at: (sample) => superheat.values[sample]! }] };
  if (coilOut.length === 0)
    return {
      reason: 'Neither superheat nor a coil outlet is logged.',
      needs: 'superheat, or coil outlet and suction pressure',
    };
  const pressure = group?.group.pressure ?? null;
  if (pressure === null)
    return { reason: 'No suction pressure is logged with the coil outlet.', needs: 'suction pressure' };
  const refrigerant = group!.group.refrigerant;
  if (refrigerant === null || !knownRefrigerant(refrigerant))
    return {
      reason: `The refrigerant ${refrigerant === null ? 'is not stated' : `${refrigerant} has no table here`}, so its dew point is not known.`,
      needs: 'the refrigerant in the site file',
    };
  const dewAt = dewLookup(refrigerant);
  return {
    series: coilOut.map((record) => ({
      record,
      at: (sample) => record.values[sample]! - dewAt(pressure.values[sample]!),
    })),
  };
}

function dewLookup(refrigerant: string): (pressure: number) => number {
  const known = new Map<number, number>();
  return (pressure) => {
    if (Number.isNaN(pressure)) return Number.NaN;
    const key = Math.round(pressure / pressureStep);
    let dew = known.get(key);
    if (dew === undefined) {
      dew = dewTemperature(refrigerant, key * pressureStep);
      known.set(key, dew);
    }
    return dew;
  };
}
