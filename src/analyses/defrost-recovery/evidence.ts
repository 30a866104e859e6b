import type { Evidence, Measure } from '../../model/evidence.ts';
import { timeAt } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { held, knownFeatures, knownMeasures } from '../evidence-parts.ts';
import { meta } from './meta.ts';

export interface Seen {
  readonly kind?: 'defrost-recovery' | 'defrost-missed';
  readonly shape: string;
  readonly probe: number | null;
  /** Sample from which it stands, and after which it was over (null: to the end). */
  readonly from: number;
  readonly to?: number | null;
  readonly certainty: number;
  readonly measures: readonly Measure[];
  readonly features: { readonly [name: string]: number };
}

export function evidenceOf(signals: CircuitSignals, seen: Seen): Evidence {
  const { circuit, log } = signals;
  const status = circuit.defrost.status;
  return {
    analysis: meta.id,
    kind: seen.kind ?? 'defrost-recovery',
    circuit: circuit.id,
    suctionGroup: circuit.suctionGroup,
    probe: seen.probe === null ? null : circuit.probes[seen.probe]!.point,
    points: [...circuit.probes.map((probe) => probe.point), ...(status === null ? [] : [status.point])],
    onset: timeAt(log.grid, seen.from),
    end: seen.to === undefined || seen.to === null ? null : timeAt(log.grid, seen.to),
    certainty: held(seen.certainty, 0, 0.99),
    measures: knownMeasures(seen.measures),
    features: knownFeatures({ fromStatus: signals.defrostSource === 'status' ? 1 : 0, ...seen.features }),
    shape: seen.shape,
  };
}
