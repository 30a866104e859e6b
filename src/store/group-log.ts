import type { Circuit, Log, SuctionGroup } from '../model/log.ts';
import type { Record } from '../model/record.ts';
import type { Packed } from './packed-records.ts';
import { unpack } from './packed-records.ts';
import { type CircuitLog, recordReader, type StoredLog } from './stored-log.ts';

/** Share of the machines that run, sample by sample, of those whose state is known; null without machines. */
function machinesRunning(machines: readonly Record[]): Record | null {
  const [first] = machines;
  if (first === undefined) return null;
  const values = first.values.map((_, sample) => {
    const known = machines.map((machine) => machine.values[sample]!).filter((state) => !Number.isNaN(state));
    return known.reduce((sum, state) => sum + state, 0) / known.length;
  });
  return { ...first, point: 'machines running', quantity: 'fraction', exportUnit: '', values };
}

/** A suction group in the place of a circuit: no air, and its machines in the place of the valve. */
function asCircuit({ id, compressors }: SuctionGroup): Circuit {
  return {
    id,
    name: id,
    suctionGroup: id,
    setPoint: null,
    differential: null,
    controls: 'average',
    probes: [],
    returnAir: [],
    coilOut: [],
    product: [],
    defrostTermination: [],
    valve: machinesRunning(compressors),
    superheat: null,
    defrost: { kind: null, status: null, perDay: null, minutes: null, starts: null },
    limits: null,
  };
}

/** What a plot of one suction group needs, in the shape of a circuit's; null when the log has no such group. */
export async function readGroupLog(
  folder: string,
  stored: StoredLog,
  groupId: string,
): Promise<CircuitLog | null> {
  const found = stored.suctionGroups.find(({ id }) => id === groupId);
  if (found === undefined) return null;
  const needed = { ...found, discharge: null, liquidLevel: null, others: {} } as Packed<SuctionGroup>;
  const group = await unpack<SuctionGroup>(needed, recordReader(folder, stored));
  const circuit = asCircuit(group);
  const { site, units, atmosphere, grid, calendar } = stored;
  const own = { suctionGroups: [group], circuits: [circuit], unassigned: [] };
  const log: Log = { site, units, atmosphere, grid, calendar, ...own };
  const phase = new Uint8Array(grid.count);
  return { log, circuit, signals: { circuit, log, phase, offSpells: [], defrosts: [] } };
}
