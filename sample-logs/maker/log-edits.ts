import type { Random } from './random.ts';
import type { SimulatedPoint, SimulatedStore } from './simulated-store.ts';

/** What the logger, not the plant, does to a history. Shared by the simulators: it is not physics. */

/** Nothing logged in `from` to `to` (minutes since the start). */
export function withGap(store: SimulatedStore, from: number, to: number): SimulatedStore {
  const blank = (point: SimulatedPoint): SimulatedPoint => {
    const values = point.values.slice();
    values.fill(Number.NaN, from, to);
    return { ...point, values };
  };
  return {
    ...store,
    groups: store.groups.map((group) => ({ ...group, points: group.points.map(blank) })),
    circuits: store.circuits.map((circuit) => ({
      ...circuit,
      air: circuit.air.map(blank),
      others: circuit.others.map(blank),
    })),
    loose: store.loose.map(blank),
  };
}

/** One air channel: a circuit and a place in it. */
export interface Channel {
  readonly circuit: string;
  readonly place: number;
}

/** Two air channels exchanged from minute `from` on, as after a panel was wired anew. */
export function withSwappedProbes(
  store: SimulatedStore,
  channels: readonly [Channel, Channel],
  from: number,
): SimulatedStore {
  const valuesOf = ({ circuit, place }: Channel): Float64Array =>
    store.circuits.find(({ id }) => id === circuit)!.air[place]!.values;
  return {
    ...store,
    circuits: store.circuits.map((circuit) => ({
      ...circuit,
      air: circuit.air.map((point, place) => {
        const which = channels.findIndex(
          (channel) => channel.circuit === circuit.id && channel.place === place,
        );
        if (which < 0) return point;
        const values = point.values.slice();
        values.set(valuesOf(channels[1 - which]!).subarray(from), from);
        return { ...point, values };
      }),
    })),
  };
}

/** A channel that nothing is wired to: 0.93 for ever. */
export function withUnconnectedChannel(store: SimulatedStore): SimulatedStore {
  const values = new Float64Array(store.count).fill(0.93);
  const point: SimulatedPoint = {
    role: 'not-connected',
    quantity: 'other',
    circuit: null,
    group: null,
    place: 0,
    values,
  };
  return { ...store, loose: [...store.loose, point] };
}

export function drawGap(store: SimulatedStore, random: Random): readonly [number, number] {
  const from = Math.round(random.between(0.2, 0.7) * store.count);
  return [from, Math.min(store.count - 1440, from + random.whole(20 * 60, 60 * 60))];
}
