import type { Evidence, Measure } from '../../model/evidence.ts';
import { timeAt } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { held, knownFeatures, knownMeasures } from '../evidence-parts.ts';
import { meta } from './meta.ts';

export interface Seen {
  readonly shape: 'off' | 'was-off' | 'override-on' | 'override-was-on' | 'set-point-left';
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
