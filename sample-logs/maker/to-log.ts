import type { Grid } from '../../src/model/grid.ts';
import type { Circuit, Log, SuctionGroup } from '../../src/model/log.ts';
import type { Record } from '../../src/model/record.ts';
import { calendarOver } from './calendar.ts';
import { asInside, asWritten, insideStep, type Logging, ucumOf, usualLogging } from './logging.ts';
import { type Naming, plainNaming } from './naming.ts';
import type {
  PointRole,
  SimulatedCircuit,
  SimulatedGroup,
  SimulatedPoint,
  SimulatedStore,
} from './simulated-store.ts';

export interface ToLogOptions {
  readonly logging?: Partial<Logging>;
  readonly naming?: Naming;
  /** Roles that the export does not carry; defaults to none. */
  readonly without?: readonly PointRole[];
}

/** A simulated store as the model log that a perfect importer would make of its export. */
export function toLog(store: SimulatedStore, options: ToLogOptions = {}): Log {
  const logging: Logging = { ...usualLogging, ...options.logging };
  const naming = options.naming ?? plainNaming;
  const without = new Set<PointRole>(options.without ?? []);
  const every = logging.intervalMinutes;
  const grid: Grid = {
    startMs: store.startMs,
    stepMs: store.stepMs * every,
    count: Math.ceil(store.count / every),
  };

  const record = (point: SimulatedPoint): Record => {
    const values = new Float64Array(grid.count);
    let first: number | null = null;
    let last: number | null = null;
    for (let i = 0; i < grid.count; i++) {
      const written = asWritten(point, point.values[i * every]!, logging, store.atmosphere);
      values[i] = asInside(point, written, logging, store.atmosphere);
      if (Number.isNaN(written)) continue;
      last = grid.startMs + i * grid.stepMs;
      first ??= last;
    }
    return {
      point: naming(point),
      quantity: point.quantity,
      exportUnit: ucumOf(point, logging),
      values,
      resolution: insideStep(point, logging),
      intervalMs: grid.stepMs,
      logging: 'sampled',
      changes: null,
      first,
      last,
    };
  };
  const all = (points: readonly SimulatedPoint[], role: PointRole): Record[] =>
    without.has(role) ? [] : points.filter((point) => point.role === role).map(record);
  const one = (points: readonly SimulatedPoint[], role: PointRole): Record | null =>
    all(points, role)[0] ?? null;

  const circuit = (from: SimulatedCircuit): Circuit => ({
    id: from.id,
    name: from.name,
    suctionGroup: from.group,
    setPoint: one(from.others, 'set-point') ?? from.setPoint,
    differential: from.differential,
    controls: typeof from.controls === 'number' ? { probe: naming(from.air[from.controls]!) } : from.controls,
    probes: from.air.map((point, position) => ({ point: naming(point), record: record(point), position })),
    returnAir: all(from.others, 'return-air'),
    coilOut: all(from.others, 'coil-out'),
    product: [],
    defrostTermination: all(from.others, 'defrost-termination'),
    valve: one(from.others, 'valve'),
    superheat: one(from.others, 'superheat'),
    defrost: {
      kind: from.defrost.kind,
      status: one(from.others, 'defrost'),
      perDay: from.defrost.perDay,
      minutes: from.defrost.minutes,
      starts: null,
    },
    limits: from.limits,
  });
  const group = (from: SimulatedGroup): SuctionGroup => ({
    id: from.id,
    rack: from.rack,
    refrigerant: from.refrigerant,
    class: from.class,
    pressure: one(from.points, 'suction'),
    pressureSetPoint: one(from.points, 'suction-set-point') ?? from.suctionSetPoint,
    compressors: all(from.points, 'compressor'),
    discharge: one(from.points, 'discharge'),
    liquidLevel: one(from.points, 'liquid-level'),
    others: {},
  });
  return {
    site: store.site,
    units: { temperature: logging.temperature, pressure: logging.pressure },
    atmosphere: store.atmosphere,
    grid,
    calendar: calendarOver(store.timeZone, grid),
    suctionGroups: store.groups.map(group),
    circuits: store.circuits.map(circuit),
    unassigned: store.loose.map(record),
  };
}
