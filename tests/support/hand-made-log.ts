import type { Calendar, Grid, LocalDay } from '../../src/model/grid.ts';
import type { Circuit, DefrostPlan, Log, SuctionGroup } from '../../src/model/log.ts';
import type { Record } from '../../src/model/record.ts';
import type { Quantity } from '../../src/units/quantities.ts';

/** Small histories made by hand, for tests that want to know every number. Local time is UTC − 6 h. */
export const startOfHistory = Date.UTC(2026, 8, 1, 6);

export interface LogParts {
  readonly days: number;
  readonly stepMinutes?: number;
  readonly circuits?: readonly Circuit[];
  readonly suctionGroups?: readonly SuctionGroup[];
  readonly unassigned?: readonly Record[];
  /** From this day on the clock stands one hour back: that day has 25 hours. */
  readonly clockBackOnDay?: number;
  /** From this day on the clock stands one hour ahead: that day has 23 hours. */
  readonly clockForwardOnDay?: number;
}

export function handMadeLog(parts: LogParts): Log {
  const grid = gridOf(parts.days, parts.stepMinutes);
  return {
    site: 'Larkspur Street Market',
    units: { temperature: 'degF', pressure: 'psig' },
    atmosphere: 101.325,
    grid,
    calendar: calendarOf(grid, parts),
    suctionGroups: parts.suctionGroups ?? [],
    circuits: parts.circuits ?? [],
    unassigned: parts.unassigned ?? [],
  };
}

export function gridOf(days: number, stepMinutes = 1): Grid {
  return { startMs: startOfHistory, stepMs: stepMinutes * 60_000, count: (days * 1440) / stepMinutes };
}

function calendarOf(grid: Grid, { days, clockBackOnDay, clockForwardOnDay }: LogParts): Calendar {
  const perDay = 86_400_000 / grid.stepMs;
  const hour = perDay / 24;
  const changesOn = clockBackOnDay ?? clockForwardOnDay ?? Number.POSITIVE_INFINITY;
  const longer = clockBackOnDay === undefined ? -1 : 1;
  const shiftOf = (day: number) => (day > changesOn ? longer * hour : 0);
  const list: LocalDay[] = [];
  for (let day = 0; day < days; day++) {
    const from = day * perDay + shiftOf(day);
    const to = Math.min(grid.count, (day + 1) * perDay + shiftOf(day + 1));
    const at = new Date(Date.UTC(2026, 8, 1 + day));
    list.push({
      date: at.toISOString().slice(0, 10),
      weekday: at.getUTCDay(),
      from,
      to,
      hours: day === changesOn ? 24 + longer : 24,
    });
  }
  const offsets = [{ from: 0, offsetMinutes: -360 }];
  if (changesOn < days)
    offsets.push({ from: changesOn * perDay + 2 * hour, offsetMinutes: -360 - 60 * longer });
  return { timeZone: 'Etc/GMT+6', days: list, offsets };
}

/** A point whose values are given one by one, or by a function of the minutes since the start. */
export function recordOf(
  point: string,
  quantity: Quantity,
  values: Float64Array,
  details: Partial<Record> = {},
): Record {
  return {
    point,
    quantity,
    exportUnit: quantity === 'temperature' ? '[degF]' : '',
    values,
    resolution: quantity === 'temperature' ? 0.1 / 1.8 : 0,
    intervalMs: 60_000,
    logging: 'sampled',
    changes: null,
    first: startOfHistory,
    last: null,
    ...details,
  };
}

export function valuesOf(grid: Grid, value: (minute: number) => number): Float64Array {
  return Float64Array.from({ length: grid.count }, (_, i) => value((i * grid.stepMs) / 60_000));
}

const noDefrost: DefrostPlan = { kind: 'off-cycle', status: null, perDay: null, minutes: null, starts: null };

export function circuitOf(
  parts: Partial<Omit<Circuit, 'probes' | 'defrost'>> & {
    readonly probes: readonly Record[];
    readonly defrost?: Partial<DefrostPlan>;
  },
): Circuit {
  const { probes, defrost, ...rest } = parts;
  return {
    id: 'M01',
    name: 'Cut fruit line-up',
    suctionGroup: null,
    setPoint: null,
    differential: null,
    controls: 'average',
    returnAir: [],
    coilOut: [],
    product: [],
    defrostTermination: [],
    valve: null,
    superheat: null,
    limits: null,
    ...rest,
    probes: probes.map((record, position) => ({ point: record.point, record, position })),
    defrost: { ...noDefrost, ...defrost },
  };
}

export function groupOf(parts: Partial<SuctionGroup> = {}): SuctionGroup {
  return {
    id: 'S1',
    rack: 'A',
    refrigerant: 'R-448A',
    class: 'medium',
    pressure: null,
    pressureSetPoint: null,
    compressors: [],
    discharge: null,
    liquidLevel: null,
    others: {},
    ...parts,
  };
}
