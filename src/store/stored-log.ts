import { join } from 'node:path';
import type { Circuit, Log, SuctionGroup } from '../model/log.ts';
import type { Record } from '../model/record.ts';
import type { CircuitSignals, DefrostWindow, Signals } from '../signals/types.ts';
import { type Packed, RecordTable, type StoredRecord, unpack } from './packed-records.ts';
import { readRecord, writeRecords } from './records-file.ts';

interface StoredCircuit {
  readonly circuit: Packed<Circuit>;
  readonly defrosts: readonly Pick<DefrostWindow, 'from' | 'to' | 'source' | 'complete'>[];
  readonly offSpells: CircuitSignals['offSpells'];
  /** Position of the phase of every sample among the records. */
  readonly phase: number;
}

/** `log.json` of a result: the log without its values, and those signals that a plot shows. */
export interface StoredLog extends Pick<Log, 'site' | 'units' | 'atmosphere' | 'grid' | 'calendar'> {
  readonly format: 'rimelog-log/1';
  readonly records: readonly StoredRecord[];
  readonly suctionGroups: readonly Packed<SuctionGroup>[];
  readonly circuits: readonly StoredCircuit[];
}

const recordsName = 'records.f32';

/** Writes the records of a log and the phases of its circuits into `folder`; returns what belongs into `log.json`. */
export async function storeLog(folder: string, log: Log, signals: Signals): Promise<StoredLog> {
  const table = new RecordTable();
  const { site, units, atmosphere, grid, calendar } = log;
  const circuits = log.circuits.map((circuit) => table.pack(circuit));
  const suctionGroups = log.suctionGroups.map((group) => table.pack(group));
  table.pack(log.unassigned);
  const records = table.records;
  const phases = signals.circuits.map(({ phase }) => phase);
  await writeRecords(join(folder, recordsName), [...records.map(({ values }) => values), ...phases]);
  return {
    format: 'rimelog-log/1',
    site,
    units,
    atmosphere,
    grid,
    calendar,
    records: records.map(({ values: _values, changes: _changes, ...described }) => described),
    suctionGroups,
    circuits: signals.circuits.map(({ defrosts, offSpells }, index) => ({
      circuit: circuits[index]!,
      defrosts: defrosts.map(({ from, to, source, complete }) => ({ from, to, source, complete })),
      offSpells,
      phase: records.length + index,
    })),
  };
}

/** Fetches records by their position in the list. */
export function recordReader(folder: string, stored: StoredLog): (position: number) => Promise<Record> {
  const { count } = stored.grid;
  return async (position) => {
    const described = stored.records[position];
    if (described === undefined) throw new RangeError(`The stored log has no record ${position}.`);
    const values = await readRecord(join(folder, recordsName), count, position, { from: 0, to: count });
    return { ...described, values, changes: null };
  };
}

/** The record of one point; null when the log has no such point. */
export async function readPoint(folder: string, stored: StoredLog, point: string): Promise<Record | null> {
  const position = stored.records.findIndex((record) => record.point === point);
  return position < 0 ? null : recordReader(folder, stored)(position);
}

/** What a plot of one circuit needs: the log with this circuit alone and the pressures of its group. */
export interface CircuitLog {
  readonly log: Log;
  readonly circuit: Circuit;
  readonly signals: Pick<CircuitSignals, 'circuit' | 'log' | 'phase' | 'offSpells'> & {
    readonly defrosts: StoredCircuit['defrosts'];
  };
}

/** Null when the log has no circuit of this id. */
export async function readCircuitLog(
  folder: string,
  stored: StoredLog,
  circuitId: string,
): Promise<CircuitLog | null> {
  const found = stored.circuits.find(({ circuit }) => circuit.id === circuitId);
  if (found === undefined) return null;
  const load = recordReader(folder, stored);
  const circuit = await unpack<Circuit>(found.circuit, load);
  const packedGroup = stored.suctionGroups.find(({ id }) => id === circuit.suctionGroup);
  const suctionGroups: SuctionGroup[] = [];
  if (packedGroup !== undefined) {
    const pressures = { ...packedGroup, compressors: [], discharge: null, liquidLevel: null, others: {} };
    suctionGroups.push(await unpack<SuctionGroup>(pressures as Packed<SuctionGroup>, load));
  }
  const { site, units, atmosphere, grid, calendar } = stored;
  const log: Log = {
    site,
    units,
    atmosphere,
    grid,
    calendar,
    suctionGroups,
    circuits: [circuit],
    unassigned: [],
  };
  const { count } = grid;
  const phase = await readRecord(join(folder, recordsName), count, found.phase, { from: 0, to: count });
  return {
    log,
    circuit,
    signals: {
      circuit,
      log,
      phase: Uint8Array.from(phase),
      offSpells: found.offSpells,
      defrosts: found.defrosts,
    },
  };
}
