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

/** Two air channels of one circuit exchanged from minute `from` on. */
export function withSwappedProbes(
  store: SimulatedStore,
  circuitId: string,
  places: readonly [number, number],
  from: number,
): SimulatedStore {
  const [first, second] = places;
  const mixed = (own: Float64Array, other: Float64Array): Float64Array => {
    const values = own.slice();
    values.set(other.subarray(from), from);
    return values;
  };
  return {
    ...store,
    circuits: store.circuits.map((circuit) => {
      if (circuit.id !== circuitId) return circuit;
      const a = circuit.air[first]!.values;
      const b = circuit.air[second]!.values;
      const air = circuit.air.map((point, place) => {
        if (place === first) return { ...point, values: mixed(a, b) };
        return place === second ? { ...point, values: mixed(b, a) } : point;
      });
      return { ...circuit, air };
    }),
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
