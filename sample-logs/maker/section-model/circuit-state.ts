import type { CircuitParameters } from './parameters.ts';

/** Everything of one circuit that changes from step to step. */
export interface CircuitState {
  readonly air: Float64Array;
  readonly wall: Float64Array;
  readonly goods: Float64Array;
  readonly liner: Float64Array;
  readonly frost: Float64Array;
  /** Ice that did not drain, kg, and melt standing where it will freeze again. */
  readonly ice: Float64Array;
  readonly pool: Float64Array;
  readonly probe: Float64Array;
  /** Slow wander of each section's infiltration, and the part common to the circuit. */
  readonly wander: Float64Array;
  commonWander: number;
  /** Refrigerant in the coil, 0 to 1, and the valve that feeds it. */
  fill: number;
  valve: number;
  integral: number;
  calling: boolean;
  mode: 'cooling' | 'defrost' | 'drip';
  modeSeconds: number;
  /** Since the run began: the same for all circuits of a store. */
  elapsedSeconds: number;
  fansDelay: number;
  /** W taken from the coils in the last step. */
  evaporatorHeat: number;
  /** Heat that the air takes up on its way from discharge to return, W, all sections, and its mean flow as a share of the usual. */
  takenUp: number;
  airflow: number;
}

export function createCircuitState(parameters: CircuitParameters): CircuitState {
  const filled = (value: number): Float64Array => new Float64Array(parameters.sections).fill(value);
  return {
    air: filled(parameters.setPoint),
    wall: filled(parameters.setPoint - 4),
    goods: filled(parameters.setPoint + 0.5),
    liner: filled(parameters.setPoint + 0.3),
    frost: filled(parameters.usualFrost * 0.3),
    ice: filled(0),
    pool: filled(0),
    probe: filled(parameters.setPoint),
    wander: filled(0),
    commonWander: 0,
    fill: 0.5,
    valve: 0.5,
    integral: 0.6,
    calling: false,
    mode: 'cooling',
    modeSeconds: 0,
    elapsedSeconds: 0,
    fansDelay: 0,
    evaporatorHeat: 0,
    takenUp: 0,
    airflow: 1,
  };
}
