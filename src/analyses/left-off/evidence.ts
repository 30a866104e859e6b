import { median } from '../../maths/median.ts';
import type { Evidence, Measure } from '../../model/evidence.ts';
import { samplesIn, timeAt } from '../../model/grid.ts';
import { targetAt } from '../../model/record.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { Phase } from '../../signals/types.ts';
import type { Celsius } from '../../units/quantities.ts';
import { held, knownFeatures, knownMeasures, measure } from '../evidence-parts.ts';
import { meta } from './meta.ts';

export interface Seen {
  readonly shape:
    | 'off'
    | 'was-off'
    | 'override-on'
    | 'override-was-on'
    | 'set-point-left'
    | 'set-point-changed';
  readonly from: number;
  /** null: still so. */
  readonly to: number | null;
  readonly certainty: number;
  readonly measures: readonly Measure[];
  readonly features: { readonly [name: string]: number };
}

export function evidenceOf({ circuit, log }: CircuitSignals, seen: Seen): Evidence {
  return {
    analysis: meta.id,
    kind: 'left-off',
    circuit: circuit.id,
    suctionGroup: circuit.suctionGroup,
    probe: null,
    points: [
      ...circuit.probes.map((probe) => probe.point),
      ...(circuit.valve === null ? [] : [circuit.valve.point]),
    ],
    onset: timeAt(log.grid, seen.from),
    end: seen.to === null ? null : timeAt(log.grid, seen.to),
    certainty: held(seen.certainty, 0, 0.99),
    measures: knownMeasures(seen.measures),
    features: knownFeatures(seen.features),
    shape: seen.shape,
  };
}

/** Median of the last hour of air before `to`; NaN where none is known. */
export function airAtEnd({ air, log }: CircuitSignals, to: number): Celsius {
  return median(air.subarray(Math.max(0, to - samplesIn(log.grid, 60)), to));
}

/** Air and set point at the end of an override, as measures. */
export function heldAt(signals: CircuitSignals, from: number, to: number): Measure[] {
  const settled = signals.air.subarray(from, to).filter((_, i) => signals.phase[from + i] === Phase.cooling);
  const last = settled.subarray(Math.max(0, settled.length - samplesIn(signals.log.grid, 12 * 60)));
  return [
    measure('airNow', median(last), 'Cel'),
    measure('setPoint', targetAt(signals.circuit.setPoint, to - 1), 'Cel'),
  ];
}
