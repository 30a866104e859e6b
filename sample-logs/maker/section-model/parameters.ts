/** The physics of one line-up; SI units, one section a case. Ranges after Larsen's display-case benchmark. */
export interface CircuitParameters {
  readonly id: string;
  readonly name: string;
  readonly class: 'medium' | 'low';
  readonly sections: number;
  readonly setPoint: number;
  readonly differential: number;
  readonly controls: 'average' | 'warmest' | number;
  readonly valve: 'on-off' | 'modulating';
  /** Heat capacities, J/K a section: air, wall with coil, goods, shelves and liner. */
  readonly airMass: number;
  readonly wallMass: number;
  readonly goodsMass: number;
  readonly linerMass: number;
  /** Conductances, W/K a section: air to coil, coil to refrigerant, air to goods, air to liner, section to section. */
  readonly coil: Float64Array;
  readonly refrigerant: number;
  readonly goods: number;
  readonly liner: number;
  readonly mixing: number;
  /** W/K to the store by infiltration and radiation. */
  readonly infiltration: Float64Array;
  readonly latentShare: number;
  /** Share of the air-to-coil conductance lost to six hours of frost, and that mass, kg. */
  readonly frostPenalty: number;
  readonly usualFrost: number;
  readonly fillSeconds: number;
  readonly probeSeconds: number;
  /** Constant probe errors, K. */
  readonly probeOffsets: Float64Array;
  readonly probeNoise: number;
  /** Return air above discharge air at the design load, K. */
  readonly returnRise: number;
  /** Settled superheat, K. */
  readonly superheat: number;
  readonly nightLoad: number;
  readonly openMinute: number;
  readonly closeMinute: number;
  readonly stocking: readonly number[];
  readonly stockingRise: number;
  readonly defrost: DefrostParameters;
  readonly alarm: { readonly high: number; readonly minutes: number };
}

export interface DefrostParameters {
  readonly kind: 'off-cycle' | 'electric' | 'hot-gas';
  readonly starts: readonly number[];
  /** Longest, and for off-cycle the usual, length in minutes. */
  readonly minutes: number;
  /** Coil temperature that ends it, Celsius; null when it runs on time alone. */
  readonly endsAt: number | null;
  readonly dripMinutes: number;
  /** Heat into each section's coil, W. */
  readonly heat: number;
  readonly fansRun: boolean;
}

/** One suction group and its machines. */
export interface GroupParameters {
  readonly id: string;
  readonly rack: string;
  readonly class: 'medium' | 'low';
  readonly refrigerant: string;
  /** Saturated suction temperature aimed at, Celsius. */
  readonly target: number;
  /** How far the target floats above its lowest while the load is small, K; 0 where it stands still. */
  readonly float: number;
  /** Width of the pressure control in kelvin of saturated temperature. */
  readonly differential: number;
  /** W of each machine at the target. */
  readonly capacities: readonly number[];
  readonly minimumOffSeconds: number;
  readonly minimumRunSeconds: number;
  readonly stageSeconds: number;
  /** J/K of the suction side, in terms of saturated temperature. */
  readonly inertia: number;
  readonly condenserRise: number;
  readonly condensingFloor: number;
  readonly liquidLevel: number;
  readonly circuits: readonly CircuitParameters[];
}

export interface StoreParameters {
  readonly site: string;
  readonly timeZone: string;
  readonly storeTemperature: number;
  readonly outdoorMean: number;
  readonly outdoorSwing: number;
  readonly groups: readonly GroupParameters[];
}
