import type { Circuit, Log, SuctionGroup } from '../../model/log.ts';
import type { Record, Target } from '../../model/record.ts';

/** All measuring points of a circuit; set points may rest for ever and are left out. */
function recordsOfCircuit(circuit: Circuit): Record[] {
  return [...circuit.probes.map((probe) => probe.record), ...recordsBesideProbes(circuit)];
}

/** The same without its air probes. */
export function recordsBesideProbes(circuit: Circuit): Record[] {
  const single = [circuit.superheat].filter((record) => record !== null);
  return [
    ...circuit.returnAir,
    ...circuit.coilOut,
    ...circuit.product,
    ...circuit.defrostTermination,
    ...single,
  ];
}

export function recordsOfGroup(group: SuctionGroup): Record[] {
  const single = [group.pressure, group.discharge, group.liquidLevel].filter((record) => record !== null);
  return [...single, ...Object.values(group.others)];
}

/** Everything that was logged, statuses and set points included. */
export function allRecords(log: Log): Record[] {
  const targets = (target: Target | null): Record[] =>
    target === null || typeof target === 'number' ? [] : [target];
  const records = [
    ...log.circuits.flatMap((circuit) => [
      ...recordsOfCircuit(circuit),
      ...targets(circuit.setPoint),
      ...[circuit.valve, circuit.defrost.status].filter((record) => record !== null),
    ]),
    ...log.suctionGroups.flatMap((group) => [
      ...recordsOfGroup(group),
      ...targets(group.pressureSetPoint),
      ...group.compressors,
    ]),
    ...log.unassigned,
  ];
  return [...new Map(records.map((record) => [record.point, record])).values()];
}
