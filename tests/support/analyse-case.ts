import type { Evidence, Verdict } from '../../src/model/evidence.ts';
import type { Circuit, SuctionGroup } from '../../src/model/log.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../../src/signals/types.ts';
import { handMadeLog, startOfHistory } from './hand-made-log.ts';

type OfCircuit = (circuit: CircuitSignals, group: GroupSignals | null, site: Signals) => Verdict;

/** What an analysis says of the first of some circuits. */
export function verdictOf(
  analyse: OfCircuit,
  circuits: readonly Circuit[],
  days: number,
  stepMinutes = 1,
  suctionGroups: readonly SuctionGroup[] = [],
): Verdict {
  const site = computeSignals(handMadeLog({ days, stepMinutes, circuits, suctionGroups }));
  const group = site.groups.find((one) => one.group.id === circuits[0]!.suctionGroup) ?? null;
  return analyse(site.circuits[0]!, group, site);
}

/** Days from the start of the history to when the evidence begins. */
export const dayOfOnset = (evidence: Evidence): number => (evidence.onset - startOfHistory) / 86_400_000;

export function measureOf(evidence: Evidence, name: string): number {
  return evidence.measures.find((one) => one.name === name)?.value ?? Number.NaN;
}

export const shapesOf = (verdict: Verdict): string[] => verdict.evidence.map((one) => one.shape).sort();
