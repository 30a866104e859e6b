import { type FaultName, faultCatalogue } from '../../sample-logs/maker/fault-catalogue.ts';
import type { PlantedFault, SimulatedStore } from '../../sample-logs/maker/simulated-store.ts';
import type { Finding } from '../../src/model/finding.ts';

export function isFlag(finding: Finding): boolean {
  return finding.severity !== 'note';
}

/** Whether a finding speaks of the planted fault: a right kind, on its circuit or, for a rack fault, its group. */
export function speaksOf(finding: Finding, fault: PlantedFault): boolean {
  if (!isFlag(finding) || !fault.kinds.includes(finding.kind)) return false;
  if (faultCatalogue[fault.fault as FaultName].scope === 'group') {
    return finding.circuit === null && finding.suctionGroup === fault.suctionGroup;
  }
  return finding.circuit === fault.circuit;
}

/** The best-ranked finding that speaks of the fault, or null. Findings come worst first. */
export function findingFor(findings: readonly Finding[], fault: PlantedFault): Finding | null {
  return findings.find((finding) => speaksOf(finding, fault)) ?? null;
}

/**
 * Flags that no planted fault explains: on a circuit without a fault, outside a group whose rack is at fault, or on
 * a group without one.
 */
export function falseFlags(findings: readonly Finding[], store: SimulatedStore): Finding[] {
  const { faults } = store.truth;
  const sickCircuits = new Set(faults.map(({ circuit }) => circuit));
  const sickGroups = new Set(
    faults.filter(({ circuit }) => circuit === null).map(({ suctionGroup }) => suctionGroup),
  );
  return findings.filter((finding) => {
    if (!isFlag(finding)) return false;
    if (finding.circuit === null)
      return !(finding.suctionGroup !== null && sickGroups.has(finding.suctionGroup));
    const group = store.circuits.find(({ id }) => id === finding.circuit)?.group ?? '';
    return !sickCircuits.has(finding.circuit) && !sickGroups.has(group);
  });
}

/** Circuits flagged on their own although their rack is at fault. */
export function flaggedUnderRack(
  findings: readonly Finding[],
  store: SimulatedStore,
  fault: PlantedFault,
): Finding[] {
  const members = new Set(
    store.circuits.filter(({ group }) => group === fault.suctionGroup).map(({ id }) => id),
  );
  return findings.filter(
    (finding) => isFlag(finding) && finding.circuit !== null && members.has(finding.circuit),
  );
}
