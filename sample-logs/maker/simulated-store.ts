import type { CauseId, FindingKind, Origin } from '../../src/model/finding.ts';
import type { Quantity } from '../../src/units/quantities.ts';

export type PointRole =
  | 'air'
  | 'set-point'
  | 'valve'
  | 'defrost'
  | 'return-air'
  | 'coil-out'
  | 'defrost-termination'
  | 'superheat'
  | 'suction'
  | 'suction-set-point'
  | 'compressor'
  | 'discharge'
  | 'liquid-level'
  | 'outdoor'
  | 'not-connected';

/** One logged point, on the store's minute base, in inside units (Celsius, kPa absolute, 0/1, fraction). */
export interface SimulatedPoint {
  readonly role: PointRole;
  readonly quantity: Quantity;
  readonly circuit: string | null;
  readonly group: string | null;
  /** Place along the line-up, or number of the machine, from 0. */
  readonly place: number;
  /** NaN where the logger wrote nothing. */
  readonly values: Float64Array;
}

export interface SimulatedCircuit {
  readonly id: string;
  readonly name: string;
  readonly group: string;
  /** Celsius, at the start of the log. */
  readonly setPoint: number;
  readonly differential: number;
  readonly controls: 'average' | 'warmest' | number;
  readonly defrost: {
    readonly kind: 'off-cycle' | 'electric' | 'hot-gas';
    readonly perDay: number;
    readonly minutes: number;
    readonly starts: readonly number[];
  };
  readonly limits: { readonly high: number; readonly minutes: number };
  readonly air: readonly SimulatedPoint[];
  /** Every other point of the circuit. */
  readonly others: readonly SimulatedPoint[];
}

export interface SimulatedGroup {
  readonly id: string;
  readonly rack: string;
  readonly class: 'medium' | 'low';
  readonly refrigerant: string;
  /** kPa absolute, at the start of the log. */
  readonly suctionSetPoint: number;
  readonly points: readonly SimulatedPoint[];
}

/** What was planted, and what a sound diagnosis may call it. */
export interface PlantedFault {
  /** The fault's own name in the simulator, `iced-end`. */
  readonly fault: string;
  readonly circuit: string | null;
  readonly suctionGroup: string | null;
  /** Place of the one probe it is about, or null. */
  readonly probe: number | null;
  /** Finding kinds that would be right, the best first. */
  readonly kinds: readonly FindingKind[];
  readonly origins: readonly Origin[];
  readonly causes: readonly CauseId[];
  /** Epoch ms. */
  readonly onset: number;
  readonly end: number | null;
  readonly shape: 'creep' | 'step' | 'event';
  /** Largest local effect, kelvin where it is a temperature. */
  readonly size: number;
  readonly sizeUnit: string;
  readonly strength: 'full' | 'mild';
  /** When the local rise first held 3 °F (1.67 K) for a day, where the fault warms something. */
  readonly reachedThree: number | null;
}

/** Something healthy that looks like trouble. */
export interface LookAlike {
  readonly what: string;
  readonly circuit: string | null;
  readonly from: number;
  readonly to: number | null;
}

export interface Truth {
  readonly simulator: 'section-model' | 'lumped-model';
  readonly seed: number;
  readonly faults: readonly PlantedFault[];
  readonly lookAlikes: readonly LookAlike[];
}

/** A store's history as the plant lived it, before any logger rounded or named it. */
export interface SimulatedStore {
  readonly site: string;
  readonly timeZone: string;
  readonly startMs: number;
  /** Time base of every point, ms. */
  readonly stepMs: number;
  readonly count: number;
  readonly atmosphere: number;
  readonly groups: readonly SimulatedGroup[];
  readonly circuits: readonly SimulatedCircuit[];
  /** Points of the store that belong to no circuit or group. */
  readonly loose: readonly SimulatedPoint[];
  readonly truth: Truth;
}
