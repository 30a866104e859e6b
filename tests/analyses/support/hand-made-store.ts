import type { Circuit, Log, SuctionGroup } from '../../../src/model/log.ts';
import type { Record } from '../../../src/model/record.ts';
import type { Quantity } from '../../../src/units/quantities.ts';

/** A circuit by what each of its probes adds to the common air, K, at a number of days since the start. */
export interface HandMadeCircuit {
  readonly id: string;
  readonly probes: readonly Curve[];
  /** Celsius; the produce line-up of the trade facts when not given (37 °F). */
  readonly setPoint?: number;
  /** What all its air does beyond set point and cycle, K. */
  readonly together?: Curve;
  /** Alarm limit in force, Celsius. */
  readonly limit?: number;
  readonly duty?: Curve;
  /** Return air over discharge air, K; none is logged when not given. */
  readonly returnGap?: Curve;
}

/** Kelvin (or a share) at a time in days; `defrost` is 0 to 1 while a defrost warms the case. */
export type Curve = (day: number, defrost: number) => number;

export interface HandMadeStore {
  /** The last of them may be a part of one. */
  readonly days: number;
  readonly minutes?: number;
  readonly circuits: readonly HandMadeCircuit[];
}

export const still: Curve = () => 0;
export const startMs = Date.UTC(2026, 8, 1);
const dayMinutes = 1440;
const produceSetPoint = 25 / 9;

/**
 * A medium-temperature group whose air cycles over 2 K in 16 minutes and is defrosted off-cycle four times a day for
 * 45 minutes, with a repeatable scatter of ±0.1 K. Nothing steers here: curves say what each probe reads.
 */
export function handMadeStore(store: HandMadeStore): Log {
  const minutes = store.minutes ?? 5;
  const count = (store.days * dayMinutes) / minutes;
  const grid = { startMs, stepMs: minutes * 60_000, count };
  const perDay = dayMinutes / minutes;
  const record = (point: string, quantity: Quantity, at: (i: number) => number): Record => {
    const values = Float64Array.from({ length: count }, (_, i) => at(i));
    return {
      point,
      quantity,
      exportUnit: quantity === 'temperature' ? '[degF]' : '',
      values,
      resolution: quantity === 'temperature' ? 0.1 / 1.8 : 1,
      intervalMs: grid.stepMs,
      logging: 'sampled',
      changes: null,
      first: startMs,
      last: startMs + (count - 1) * grid.stepMs,
    };
  };
  const circuits = store.circuits.map((one, c): Circuit => {
    const setPoint = one.setPoint ?? produceSetPoint;
    const shift = 17 * c;
    const dayOf = (i: number): number => (i * minutes) / dayMinutes;
    const bump = (i: number): number => defrostAt(i * minutes + shift);
    const air = (curve: Curve, p: number) => (i: number) =>
      setPoint +
      Math.sin((2 * Math.PI * (i * minutes + shift)) / 16) * (1 - bump(i)) +
      7 * bump(i) +
      (one.together ?? still)(dayOf(i), bump(i)) +
      curve(dayOf(i), bump(i)) +
      0.2 * (scatter(i, 31 * c + p) - 0.5);
    return {
      id: one.id,
      name: one.id,
      suctionGroup: 'S1',
      setPoint,
      differential: 10 / 9,
      controls: 'average',
      probes: one.probes.map((curve, p) => ({
        point: `${one.id} air ${'ABCDEFGH'[p]}`,
        position: p,
        record: record(`${one.id} air ${'ABCDEFGH'[p]}`, 'temperature', air(curve, p)),
      })),
      returnAir:
        one.returnGap === undefined
          ? []
          : [
              record(
                `${one.id} return`,
                'temperature',
                (i) => air(still, 7)(i) + one.returnGap!(dayOf(i), bump(i)),
              ),
            ],
      coilOut: [],
      product: [],
      defrostTermination: [],
      valve: record(`${one.id} valve`, 'status', (i) =>
        bump(i) > 0 ? 0 : scatter(i, 977 + c) < (one.duty ?? (() => 0.5))(dayOf(i), 0) ? 1 : 0,
      ),
      superheat: null,
      defrost: {
        kind: 'off-cycle',
        status: record(`${one.id} defrost`, 'status', (i) => (inDefrost(i * minutes + shift) ? 1 : 0)),
        perDay: 4,
        minutes: 45,
        starts: null,
      },
      limits: one.limit == null ? null : { high: one.limit, minutes: 60 },
    };
  });
  const group: SuctionGroup = {
    id: 'S1',
    rack: 'A',
    refrigerant: null,
    class: 'medium',
    pressure: null,
    pressureSetPoint: null,
    compressors: [],
    discharge: null,
    liquidLevel: null,
    others: {},
  };
  return {
    site: 'Thistle Lane Grocer',
    units: { temperature: 'degF', pressure: 'psig' },
    atmosphere: 101.325,
    grid,
    calendar: {
      timeZone: 'UTC',
      days: Array.from({ length: Math.ceil(store.days) }, (_, d) => ({
        date: new Date(startMs + d * 86_400_000).toISOString().slice(0, 10),
        weekday: (2 + d) % 7,
        from: d * perDay,
        to: Math.min(count, (d + 1) * perDay),
        hours: 24,
      })),
      offsets: [{ from: 0, offsetMinutes: 0 }],
    },
    suctionGroups: [group],
    circuits,
    unassigned: [],
  };
}

function inDefrost(minute: number): boolean {
  return minute % 360 >= 300 && minute % 360 < 345;
}

/** 0 to 1 over a defrost, and back within 20 minutes. */
function defrostAt(minute: number): number {
  const into = (minute % 360) - 300;
  if (into < 0) return 0;
  return into < 45 ? Math.min(1, into / 30) : Math.max(0, 1 - (into - 45) / 20);
}

/** 0 to 1, the same for the same place: a Weyl sequence folded twice. */
function scatter(i: number, stream: number): number {
  const x = Math.sin(12.9898 * i + 78.233 * stream) * 43758.5453;
  return x - Math.floor(x);
}
