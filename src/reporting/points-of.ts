import type { Circuit, Log, SuctionGroup } from '../model/log.ts';
import type { Record, Target } from '../model/record.ts';

const logged = (target: Target | null): Record | null => (typeof target === 'number' ? null : target);

function recordsOfCircuit(circuit: Circuit): readonly (Record | null)[] {
  return [
    ...circuit.probes.map(({ record }) => record),
    ...circuit.returnAir,
    ...circuit.coilOut,
    ...circuit.product,
    ...circuit.defrostTermination,
    logged(circuit.setPoint),
    circuit.valve,
    circuit.superheat,
    circuit.defrost.status,
  ];
}

function recordsOfGroup(group: SuctionGroup): readonly (Record | null)[] {
  return [
    group.pressure,
    logged(group.pressureSetPoint),
    ...group.compressors,
    group.discharge,
    group.liquidLevel,
    ...Object.values(group.others),
  ];
}

/** Names of all points of a log, each once. */
export function pointsOf(log: Log): string[] {
  const records = [
    ...log.circuits.flatMap(recordsOfCircuit),
    ...log.suctionGroups.flatMap(recordsOfGroup),
    ...log.unassigned,
  ];
  return [...new Set(records.flatMap((record) => (record === null ? [] : [record.point])))];
}
