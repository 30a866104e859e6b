import type { Log, SuctionGroup } from '../model/log.ts';
import type { Record, Target } from '../model/record.ts';
import { groupSignals } from '../signals/group-signals.ts';
import { factsOf } from '../signals/record-facts.ts';
import type {
  CircuitSignals,
  DefrostSlot,
  GroupSignals,
  ProbeDays,
  Signals,
  Spells,
} from '../signals/types.ts';

/**
 * The signals as they stood at the end of a local day: nothing later is in them. What was read from the samples
 * (defrost windows, phases, settled air, daily figures) is kept and cut, not read anew; what peers did is computed
 * anew. The samples are shared, not copied.
 *
 * @param lastDay position in `calendar.days` of the last day that is kept
 */
export function signalsUntil(signals: Signals, lastDay: number): Signals {
  const log = logUntil(signals.log, lastDay);
  const circuits = signals.circuits.map((circuit, k) => circuitUntil(circuit, log, k));
  const groups = signals.groups.map((group, k) => groupUntil(group, log, k, circuits));
  return { log, circuits, groups };
}

function logUntil(log: Log, lastDay: number): Log {
  const days = log.calendar.days.slice(0, lastDay + 1);
  const count = days.at(-1)!.to;
  return {
    ...log,
    grid: { ...log.grid, count },
    calendar: {
      ...log.calendar,
      days,
      offsets: log.calendar.offsets.filter(({ from }) => from < count),
    },
    circuits: recordsUntil(log.circuits, count, log.grid.startMs + count * log.grid.stepMs),
    suctionGroups: recordsUntil(log.suctionGroups, count, log.grid.startMs + count * log.grid.stepMs),
    unassigned: [],
  };
}

const isRecord = (value: object): value is Record =>
  'values' in value && value.values instanceof Float64Array && 'point' in value;

/** The same value with every record in it cut. */
function recordsUntil<T>(value: T, count: number, endMs: number): T {
  const cut = (part: unknown): unknown => {
    if (Array.isArray(part)) return part.map(cut);
    if (typeof part !== 'object' || part === null) return part;
    if (isRecord(part)) return recordUntil(part, count, endMs);
    return Object.fromEntries(Object.entries(part).map(([key, item]) => [key, cut(item)]));
  };
  return cut(value) as T;
}

function recordUntil(record: Record, count: number, endMs: number): Record {
  const { changes } = record;
  const known = changes === null ? 0 : changes.times.filter((time) => time < endMs).length;
  return {
    ...record,
    values: record.values.subarray(0, count),
    changes:
      changes === null
        ? null
        : { times: changes.times.subarray(0, known), values: changes.values.subarray(0, known) },
    last: record.last === null ? null : Math.min(record.last, endMs - 1),
  };
}

function circuitUntil(signals: CircuitSignals, log: Log, position: number): CircuitSignals {
  const { count } = log.grid;
  const days = log.calendar.days.length;
  const daily = (values: Float64Array) => values.subarray(0, days);
  return {
    ...signals,
    circuit: log.circuits[position]!,
    log,
    get facts() {
      return log.circuits[position]!.probes.map((probe) => factsOf(probe.record));
    },
    air: signals.air.subarray(0, count),
    phase: signals.phase.subarray(0, count),
    defrosts: signals.defrosts.filter(({ to }) => to < count),
    slots: signals.slots.map((slot) => slotUntil(slot, count)),
    probes: signals.probes.map((probe) => probeUntil(probe, days)),
    level: daily(signals.level),
    setPoint: daily(signals.setPoint),
    setPointSteps: signals.setPointSteps.filter(({ at }) => at < count),
    duty: daily(signals.duty),
    valveSpells: spellsUntil(signals.valveSpells, count),
    offSpells: signals.offSpells
      .filter(({ from }) => from < count)
      .map(({ from, to }) => ({ from, to: Math.min(to, count) })),
  };
}

/** The swing stays unmade until it is asked for. */
function probeUntil(probe: ProbeDays, days: number): ProbeDays {
  const until = (values: Float64Array) => values.subarray(0, days);
  return {
    median: until(probe.median),
    night: until(probe.night),
    day: until(probe.day),
    p10: until(probe.p10),
    p90: until(probe.p90),
    lateDefrost: until(probe.lateDefrost),
    peak: until(probe.peak),
    recovery: until(probe.recovery),
    coverage: until(probe.coverage),
    get swing() {
      return until(probe.swing);
    },
  };
}

function slotUntil({ minute, due, missed }: DefrostSlot, count: number): DefrostSlot {
  const kept = { due: due.filter((at) => at < count), missed: missed.filter((at) => at < count) };
  return { minute, ...kept, expected: kept.due.length, seen: kept.due.length - kept.missed.length };
}

/** Those that began before a sample; the one that goes on beyond it is cut there. */
function spellsUntil(spells: Spells, end: number): Spells {
  let count = 0;
  while (count < spells.count && spells.from[count]! < end) count++;
  const to = spells.to.slice(0, count);
  const whole = spells.whole.slice(0, count);
  if (count > 0 && to[count - 1]! >= end) {
    to[count - 1] = end;
    whole[count - 1] = 0;
  }
  return { count, from: spells.from.subarray(0, count), to, on: spells.on.subarray(0, count), whole };
}

const noTarget: Target | null = null;

function groupUntil(
  signals: GroupSignals,
  log: Log,
  position: number,
  circuits: readonly CircuitSignals[],
): GroupSignals {
  const group: SuctionGroup = log.suctionGroups[position]!;
  const days = log.calendar.days.length;
  const members = circuits.filter(({ circuit }) => circuit.suctionGroup === group.id);
  const withoutRecords = { ...group, pressure: null, pressureSetPoint: noTarget, compressors: [] };
  return {
    ...groupSignals(withoutRecords, signals.suction.subarray(0, days), members, log.calendar),
    group,
    suctionTarget: signals.suctionTarget.subarray(0, days),
    compressorSpells: signals.compressorSpells.map((spells) => spellsUntil(spells, log.grid.count)),
  };
}
