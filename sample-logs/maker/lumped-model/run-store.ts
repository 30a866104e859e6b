import { createRandom } from '../random.ts';
import { createRecorder } from '../recorder.ts';
import { saturationPressure } from '../saturation.ts';
import type { SimulatedStore, Truth } from '../simulated-store.ts';
import type { StoreHabits } from './parameters.ts';
import { createCircuitRun } from './run-circuit.ts';
import { createGroupRun } from './run-group.ts';
import type { CircuitSymptom, GroupSymptom } from './symptoms.ts';

export interface HabitsPlan {
  readonly seed: number;
  readonly startMs: number;
  readonly days: number;
  readonly humidDays: readonly [number, number] | null;
  readonly warmDays: readonly [number, number] | null;
  readonly circuits: ReadonlyMap<string, readonly CircuitSymptom[]>;
  readonly groups: ReadonlyMap<string, readonly GroupSymptom[]>;
  readonly truth: Truth;
}

/** Lives through `days` of minutes, with half a day before them to get going. */
export function runHabits(habits: StoreHabits, plan: HabitsPlan): SimulatedStore {
  const random = createRandom(plan.seed).branch('habits');
  const count = plan.days * 1440;
  const recorder = createRecorder(count);
  const groups = habits.groups.map((group) => ({
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
  const weather = random.branch('weather');
  const within = (day: number, days: readonly [number, number] | null): number =>
    days !== null && day >= days[0] && day < days[1] ? 1 : 0;
  const firstWeekday = new Date(plan.startMs).getUTCDay();
  let front = 0;
  let damp = 0;
  for (let minute = -720; minute < count; minute++) {
    const clock = (minute + 1440) % 1440;
    const weekday = (firstWeekday + Math.floor(minute / 1440) + 7) % 7;
    front = 0.9996 * front + 0.08 * weather.normal();
    damp += (2 * within(minute / 1440, plan.humidDays) + within(minute / 1440, plan.warmDays) - damp) / 600;
    const warm = 7 * within(minute / 1440, plan.warmDays);
    const air = habits.outdoorMean + front + warm + 5 * Math.sin((2 * Math.PI * (clock - 560)) / 1440);
    if (minute >= 0) outdoor.values[minute] = air;
    for (const { run, circuits } of groups) {
      run.minute(minute, clock, air);
      for (const circuit of circuits)
        circuit.minute(minute, clock, weekday, damp, run.state.suctionShift, run.state.saturated);
    }
  }
  return {
    site: habits.site,
    timeZone: habits.timeZone,
    startMs: plan.startMs,
    stepMs: 60_000,
    count,
    atmosphere: 101.325,
    groups: groups.map(({ group, run }) => ({
      id: group.id,
      rack: group.rack,
      class: group.class,
      refrigerant: group.refrigerant,
      suctionSetPoint: saturationPressure(group.refrigerant, group.saturated),
      points: run.points,
    })),
    circuits: groups.flatMap(({ group, circuits }) =>
      circuits.map((run, i) => {
        const { id, name, setPoint, differential, controls, defrost, alarm } = group.circuits[i]!;
        return {
          id,
          name,
          group: group.id,
          setPoint,
          differential,
          controls,
          defrost: {
            kind: defrost.kind,
            perDay: defrost.starts.length,
            minutes: defrost.minutes,
            starts: defrost.starts,
          },
          limits: alarm,
          air: run.air,
          others: run.others,
        };
      }),
    ),
    loose: [outdoor],
    truth: plan.truth,
  };
}
