import type { Evidence } from '../../model/evidence.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import type { EpochMs, Kelvin } from '../../units/quantities.ts';
import { meta } from './meta.ts';

export interface ChangeFacts {
  readonly shape: string;
  readonly onset: EpochMs;
  readonly end: EpochMs | null;
  readonly certainty: number;
  /** Change against the neighbours, positive when warmer. */
  readonly shift: Kelvin;
  /** Day-to-day scatter around it. */
  readonly error: Kelvin;
  readonly features: Readonly<{ [name: string]: number }>;
}

/** The one way in which this analysis writes down what it saw on a probe. */
export function changeEvidence(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
  facts: ChangeFacts,
): Evidence {
  const { circuit } = signals;
  const finite = Object.entries(facts.features).filter(([, value]) => Number.isFinite(value));
  return {
    analysis: meta.id,
    kind: 'probe-disagreement',
    circuit: circuit.id,
    suctionGroup: circuit.suctionGroup,
    probe: circuit.probes[probe]!.point,
    points: [probe, ...peers].map((one) => circuit.probes[one]!.point),
    onset: facts.onset,
    end: facts.end,
    certainty: facts.certainty,
    measures: [
      {
        name: 'change against neighbours',
        value: facts.shift,
        low: facts.shift - 1.645 * facts.error,
        high: facts.shift + 1.645 * facts.error,
        unit: 'K',
      },
    ],
    features: { shift: facts.shift, ...Object.fromEntries(finite) },
    shape: facts.shape,
  };
}
