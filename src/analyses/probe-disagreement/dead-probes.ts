import type { Evidence } from '../../model/evidence.ts';
import { timeAt } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { changeEvidence } from './change-evidence.ts';
import { motionless } from './motionless.ts';
import { settings } from './settings.ts';
import { silence } from './silent.ts';

/** Past this share of the log a dead stretch spoils comparison with the neighbours. */
const spoilingShare = 0.15;

/** Probes that do not measure: motionless, on a rail, or silent beside living neighbours. */
export function deadProbes(signals: CircuitSignals): { evidence: Evidence[]; without: Set<number> } {
  const evidence: Evidence[] = [];
  const without = new Set<number>();
  const { grid } = signals.log;
  for (const { probe, peers } of eachProbe(signals)) {
    if (signals.circuit.probes[probe]!.record.first === null) {
      without.add(probe);
      continue;
    }
    const spell = deadSpell(signals, probe, peers);
    if (spell === null) continue;
    const lasting = spell.to >= grid.count - 1;
    if (lasting || spell.to - spell.from > spoilingShare * grid.count) without.add(probe);
    const hours = ((spell.to - spell.from) * grid.stepMs) / 3_600_000;
    evidence.push({
      ...changeEvidence(signals, probe, peers, {
        shape: spell.shape,
        onset: timeAt(grid, spell.from),
        end: lasting ? null : timeAt(grid, spell.to),
        certainty: Math.min(0.98, 0.85 + hours / 200),
        shift: 0,
        error: 0,
        features: { hours, wholeLog: spell.from === 0 ? 1 : 0, ...spell.features },
      }),
      measures: [{ name: 'time without a true reading', value: hours, low: null, high: null, unit: 'h' }],
    });
  }
  return { evidence, without };
}

interface DeadSpell {
  readonly shape: 'open-or-short' | 'stuck' | 'silent';
  readonly from: number;
  readonly to: number;
  readonly features: { readonly [name: string]: number };
}

function deadSpell(signals: CircuitSignals, probe: number, peers: readonly number[]): DeadSpell | null {
  const flat = motionless(signals, probe, peers);
  if (flat !== null) {
    const shape = flat.distance >= settings.railJump.value ? 'open-or-short' : 'stuck';
    return { shape, from: flat.from, to: flat.to, features: { distance: flat.distance } };
  }
  const gone = silence(signals, probe, peers);
  return gone === null ? null : { shape: 'silent', from: gone.from, to: gone.to, features: {} };
}

function* eachProbe(signals: CircuitSignals): Generator<{ probe: number; peers: number[] }> {
  const all = signals.circuit.probes.map((_, probe) => probe);
  for (const probe of all) {
    const peers = all.filter(
      (other) => other !== probe && signals.circuit.probes[other]!.record.first !== null,
    );
    if (peers.length > 0) yield { probe, peers };
  }
}
