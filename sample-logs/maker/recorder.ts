import type { Quantity } from '../../src/units/quantities.ts';
import type { PointRole, SimulatedPoint } from './simulated-store.ts';

/** Makes the empty points of a store, `count` minutes long. */
export function createRecorder(count: number) {
  return {
    point(
      role: PointRole,
      quantity: Quantity,
      owner: { circuit?: string; group?: string },
      place = 0,
    ): SimulatedPoint {
      return {
        role,
        quantity,
        circuit: owner.circuit ?? null,
        group: owner.group ?? null,
        place,
        values: new Float64Array(count).fill(Number.NaN),
      };
    },
  };
}
export type Recorder = ReturnType<typeof createRecorder>;
