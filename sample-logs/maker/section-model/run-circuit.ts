import type { Random } from '../random.ts';
import type { Recorder } from '../recorder.ts';
import { advanceSections } from './advance-circuit.ts';
import { createCircuitState } from './circuit-state.ts';
import { controlDefrost, controlReading, controlValve } from './control-circuit.ts';
import { type CircuitDisturbance, createCircuitEffects, resetCircuitEffects } from './effects.ts';
import type { CircuitParameters } from './parameters.ts';
import { advanceProbes, loggedReading } from './probe-readings.ts';
import type { Surroundings } from './surroundings.ts';
import { createTradingDay } from './trading-day.ts';

/** Share of the usual flow that still moves about a case whose fans stand. */
const leastFlow = 0.3;
const mostOfTheWay = 0.8;

/** One circuit on its way through the log: `minute` once a minute, then `advance` for every step of physics. */
export function createCircuitRun(
  parameters: CircuitParameters,
  group: string,
  disturbances: readonly CircuitDisturbance[],
  random: Random,
  recorder: Recorder,
) {
  const state = createCircuitState(parameters);
  const effects = createCircuitEffects(parameters.sections);
  const readings = Float64Array.from(state.probe);
  const tradingDay = createTradingDay(parameters, random.branch('trade'));
  const wander = random.branch('wander');
  const noise = random.branch('noise');
  const keepSection = Math.exp(-1 / 180);
  const keepCircuit = Math.exp(-1 / 1080);
  const owner = { circuit: parameters.id, group };
  const places = [...parameters.coil.keys()];
  const air = places.map((i) => recorder.point('air', 'temperature', owner, i));
  const setPoint = recorder.point('set-point', 'temperature', owner);
  const valve = recorder.point('valve', parameters.valve === 'on-off' ? 'status' : 'fraction', owner);
  const defrost = recorder.point('defrost', 'status', owner);
  const returnAir = recorder.point('return-air', 'temperature', owner);
  const coilOut = recorder.point('coil-out', 'temperature', owner);
  const termination = recorder.point('defrost-termination', 'temperature', owner);
  const superheat = recorder.point('superheat', 'temperature-difference', owner);
  let load = 1;
  let heat = 8;
  const around = { load: 1, saturated: 0, storeTemperature: 21 };

  const record = (at: number, saturated: number): void => {
    for (const i of places) air[i]!.values[at] = loggedReading(parameters, effects, readings, i, noise);
    setPoint.values[at] = parameters.setPoint + effects.setPointShift;
    valve.values[at] = state.valve;
    defrost.values[at] = state.mode === 'cooling' ? 0 : 1;
    returnAir.values[at] = state.air[0]! + returnRise() + 0.1 * noise.normal();
    superheat.values[at] = heat + 0.15 * noise.normal();
    coilOut.values[at] = saturated + heat + 0.1 * noise.normal();
    termination.values[at] = state.wall[places.length - 1]! + 0.08 * noise.normal();
  };

  /** What the air takes up from discharge to return, over what its flow carries; never most of the way to the store's own air. */
  const returnRise = (): number => {
    let usual = 0;
    for (const infiltration of parameters.infiltration)
      usual += infiltration * (around.storeTemperature - parameters.setPoint);
    const rise = (parameters.returnRise * state.takenUp) / usual / Math.max(leastFlow, state.airflow);
    return Math.min(rise, mostOfTheWay * (around.storeTemperature - state.air[0]!));
  };

  return {
    state,
    air,
    others: [setPoint, valve, defrost, returnAir, coilOut, termination, superheat],
    minute(
      minute: number,
      minuteOfDay: number,
      weekday: number,
      surroundings: Surroundings,
      saturated: number,
    ): void {
      resetCircuitEffects(effects);
      effects.humidity = surroundings.humidity;
      for (const disturb of disturbances) disturb(effects, minute);
      state.commonWander =
        keepCircuit * state.commonWander + Math.sqrt(1 - keepCircuit ** 2) * 0.05 * wander.normal();
      for (const i of places) {
        state.wander[i] =
          keepSection * state.wander[i]! + Math.sqrt(1 - keepSection ** 2) * 0.06 * wander.normal();
      }
      load = tradingDay.load(minute, minuteOfDay, weekday) * (1 + 0.25 * (surroundings.humidity - 1));
      controlDefrost(parameters, state, effects, minuteOfDay);
      if (minute >= 0) record(minute, saturated);
      around.load = load;
      around.storeTemperature = surroundings.storeTemperature;
      const settled =
        state.fill > 0.5
          ? parameters.superheat + 22 * (1 - Math.min(1, effects.feeding))
          : Math.min(17, state.air[0]! - saturated);
      heat += (settled - heat) / 2.5;
    },
    advance(saturated: number, seconds: number): void {
      around.saturated = saturated;
      advanceProbes(parameters, state, effects, load, seconds, readings);
      controlValve(parameters, state, effects, controlReading(parameters, readings, effects), seconds);
      state.modeSeconds += seconds;
      state.elapsedSeconds += seconds;
      if (state.fansDelay > 0) state.fansDelay -= seconds;
      advanceSections(parameters, state, effects, around, seconds);
    },
  };
}
