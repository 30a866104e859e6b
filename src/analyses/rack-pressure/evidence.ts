import type { Evidence, Measure } from '../../model/evidence.ts';
import type { GroupSignals } from '../../signals/types.ts';
import type { EpochMs } from '../../units/quantities.ts';
import { held, knownFeatures, knownMeasures } from '../evidence-parts.ts';
import { meta } from './meta.ts';

export type Shape =
  | 'high'
  | 'target-raised'
  | 'target-lowered'
  | 'capacity-shortfall'
  | 'group-warm'
  | 'low'
  | 'low-pressure-trips'
  | 'service-visit'
  | 'float-stopped'
  | 'target-left'
  | 'condensing-high'
  | 'level-low'
  | 'short-of-liquid';

export interface Seen {
  readonly shape: Shape;
  readonly onset: EpochMs;
  readonly end: EpochMs | null;
  readonly certainty: number;
  readonly measures: readonly Measure[];
  readonly features: { readonly [name: string]: number };
  readonly points: readonly (string | undefined)[];
}

export function evidenceOf({ group }: GroupSignals, seen: Seen): Evidence {
  return {
    analysis: meta.id,
    kind: 'rack-pressure',
    circuit: null,
    suctionGroup: group.id,
    probe: null,
    points: seen.points.filter((point) => point !== undefined),
    onset: seen.onset,
    end: seen.end,
    certainty: held(seen.certainty, 0, 0.99),
    measures: knownMeasures(seen.measures),
    features: knownFeatures(seen.features),
    shape: seen.shape,
  };
}
