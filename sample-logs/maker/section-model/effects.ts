/** What faults and events do to one circuit at one minute. Reset every minute, then each disturbance has its say. */
export interface CircuitEffects {
  /** Share of the usual airflow over each section's coil. */
  readonly airflow: Float64Array;
  /** Store air that leaks into each section at all hours and in trading hours, times its usual infiltration. */
  readonly leak: Float64Array;
  readonly curtainLeak: Float64Array;
  /** Share of the melt that stays and freezes again at each section. */
  readonly refreeze: Float64Array;
  /** Kelvin by which each probe reads high; inside the control loop. */
  readonly probeBias: Float64Array;
  /** Extra scatter of each probe, K (1 σ). */
  readonly probeScatter: Float64Array;
  /** 0 sound, 1 stuck, 2 open lead, 3 shorted lead. */
  readonly probeState: Uint8Array;
  /** Share of the way from discharge air to return air at which each probe sits. */
  readonly probeMoved: Float64Array;
  /** Share of the usual refrigerant feed. */
  feeding: number;
  load: number;
  humidity: number;
  setPointShift: number;
  /** Period of a valve pulsed by the clock instead of by the dead band; 0 for none. */
  pulseSeconds: number;
  /** Whether that clock is one for all circuits. */
  pulseInStep: boolean;
  /** Minutes by which the control's clock is ahead of the time of day. */
  clockAhead: number;
  forced: 'none' | 'off' | 'on';
  skipDefrost: boolean;
  /** Share of the defrost heat that is there. */
  defrostHeat: number;
  terminationWorks: boolean;
}

export interface GroupEffects {
  /** Kelvin added to the saturated target. */
  targetShift: number;
  /** Whether the logged set point follows the shift (a change of intent) or not (the control aims elsewhere). */
  targetLogged: boolean;
  /** Kelvin above its lowest at which the target stands where its float is switched off; null while it works. */
  floatFixed: number | null;
  /** The load holds the float at its lowest. */
  floatAtLowest: boolean;
  capacityShare: number;
  forcedOn: boolean;
  /**
   * How the last machine short-cycles, or null: it stops after `runSeconds` unless suction stands above the band by
   * `holdsAbove` half-widths, and starts again after `offSeconds`.
   */
  trim: { readonly runSeconds: number; readonly offSeconds: number; readonly holdsAbove: number } | null;
  condensingRise: number;
  /** Share of its usual level at which the liquid stands in the receiver. */
  liquidShare: number;
}

export type CircuitDisturbance = (effects: CircuitEffects, minute: number) => void;
export type GroupDisturbance = (effects: GroupEffects, minute: number) => void;

export function createCircuitEffects(sections: number): CircuitEffects {
  return {
    airflow: new Float64Array(sections),
    leak: new Float64Array(sections),
    curtainLeak: new Float64Array(sections),
    refreeze: new Float64Array(sections),
    probeBias: new Float64Array(sections),
    probeScatter: new Float64Array(sections),
    probeState: new Uint8Array(sections),
    probeMoved: new Float64Array(sections),
    feeding: 1,
    load: 1,
    humidity: 1,
    setPointShift: 0,
    pulseSeconds: 0,
    pulseInStep: false,
    clockAhead: 0,
    forced: 'none',
    skipDefrost: false,
    defrostHeat: 1,
    terminationWorks: true,
  };
}

export function resetCircuitEffects(effects: CircuitEffects): void {
  effects.airflow.fill(1);
  effects.leak.fill(0);
  effects.curtainLeak.fill(0);
  effects.refreeze.fill(0);
  effects.probeBias.fill(0);
  effects.probeScatter.fill(0);
  effects.probeState.fill(0);
  effects.probeMoved.fill(0);
  effects.feeding = 1;
  effects.load = 1;
  effects.humidity = 1;
  effects.setPointShift = 0;
  effects.pulseSeconds = 0;
  effects.pulseInStep = false;
  effects.clockAhead = 0;
  effects.forced = 'none';
  effects.skipDefrost = false;
  effects.defrostHeat = 1;
  effects.terminationWorks = true;
}

export function createGroupEffects(): GroupEffects {
  return {
    targetShift: 0,
    targetLogged: false,
    floatFixed: null,
    floatAtLowest: false,
    capacityShare: 1,
    forcedOn: false,
    trim: null,
    condensingRise: 0,
    liquidShare: 1,
  };
}

export function resetGroupEffects(effects: GroupEffects): void {
  Object.assign(effects, createGroupEffects());
}
