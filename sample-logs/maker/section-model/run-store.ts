import { createRandom } from '../random.ts';
import { createRecorder } from '../recorder.ts';
import { saturationPressure } from '../saturation.ts';
import type { SimulatedCircuit, SimulatedGroup, SimulatedStore, Truth } from '../simulated-store.ts';
import type { CircuitDisturbance, GroupDisturbance } from './effects.ts';
import type { StoreParameters } from './parameters.ts';
import { createCircuitRun } from './run-circuit.ts';
import { createGroupRun } from './run-group.ts';
import { createSurroundings, type WeatherWishes } from './surroundings.ts';

export interface RunPlan {
  readonly seed: number;
  /** Local midnight at which the log starts, epoch ms. */
  readonly startMs: number;
  readonly days: number;
  readonly weather: WeatherWishes;
  /** By circuit id, and by group id. */
  readonly circuits: ReadonlyMap<string, readonly CircuitDisturbance[]>;
  readonly groups: ReadonlyMap<string, readonly GroupDisturbance[]>;
  readonly truth: Truth;
}

const atmosphere = 101.325;
const stepSeconds = 15;
const warmUpMinutes = 1440;

/** Lives through the plan: a day to settle, then `days` of log, physics every 15 s, recorded every minute. */
export function runStore(parameters: StoreParameters, plan: RunPlan): SimulatedStore {
  const random = createRandom(plan.seed).branch('run');
  const count = plan.days * 1440;
  const recorder = createRecorder(count);
  const surroundings = createSurroundings(parameters, random.branch('weather'), plan.weather);
  const groups = parameters.groups.map((group) => ({
    group,
    run: createGroupRun(group, plan.groups.get(group.id) ?? [], random.branch(group.id), recorder),
    circuits: group.circuits.map((circuit) =>
      createCircuitRun(
        circuit,
        group.id,
        plan.circuits.get(circuit.id) ?? [],
        random.branch(circuit.id),
        recorder,
      ),
    ),
  }));
  const outdoor = recorder.point('outdoor', 'temperature', {});
  const firstWeekday = new Date(plan.startMs).getUTCDay();
  for (let minute = -warmUpMinutes; minute < count; minute++) {
    const minuteOfDay = (minute + 1440) % 1440;
    const weekday = (firstWeekday + Math.floor(minute / 1440) + 7) % 7;
    surroundings.advance(minute, minuteOfDay);
    if (minute >= 0) outdoor.values[minute] = surroundings.now.outdoor;
    for (const { run, circuits } of groups) {
      run.minute(minute, surroundings.now.outdoor);
      for (const circuit of circuits)
        circuit.minute(minute, minuteOfDay, weekday, surroundings.now, run.state.saturated);
      for (let second = 0; second < 60; second += stepSeconds) {
        let evaporated = 0;
        for (const circuit of circuits) {
          circuit.advance(run.state.saturated, stepSeconds);
          evaporated += circuit.state.evaporatorHeat;
        }
        run.advance(evaporated, surroundings.now.outdoor, stepSeconds);
      }
    }
  }
  return {
    site: parameters.site,
    timeZone: parameters.timeZone,
    startMs: plan.startMs,
    stepMs: 60_000,
    count,
    atmosphere,
    groups: groups.map(
      ({ group, run }): SimulatedGroup => ({
        id: group.id,
        rack: group.rack,
        class: group.class,
        refrigerant: group.refrigerant,
        suctionSetPoint: saturationPressure(group.refrigerant, group.target),
        points: run.points,
      }),
    ),
    circuits: groups.flatMap(({ group, circuits }) =>
      circuits.map((run, i): SimulatedCircuit => {
        const circuit = group.circuits[i]!;
        return {
          id: circuit.id,
          name: circuit.name,
          group: group.id,
          setPoint: circuit.setPoint,
          differential: circuit.differential,
          controls: circuit.controls,
          defrost: {
            kind: circuit.defrost.kind,
            perDay: circuit.defrost.starts.length,
            minutes: circuit.defrost.minutes,
            starts: circuit.defrost.starts,
          },
          limits: circuit.alarm,
          air: run.air,
          others: run.others,
        };
      }),
    ),
    loose: [outdoor],
    truth: plan.truth,
  };
}
