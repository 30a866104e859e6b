import type { Random } from '../random.ts';
import type { Recorder } from '../recorder.ts';
import { createDefrostShape } from './defrost-shape.ts';
import type { CircuitHabits } from './parameters.ts';
import { type CircuitSymptom, clearSymptoms, createSymptoms } from './symptoms.ts';

/** The most by which a valve that never shuts can pull a line-up below its set point, K. */
const overcooling = 3;

/** Lets one circuit live by its habits, a minute at a time. */
export function createCircuitRun(
  habits: CircuitHabits,
  group: string,
  symptomsAt: readonly CircuitSymptom[],
  random: Random,
  recorder: Recorder,
) {
  const owner = { circuit: habits.id, group };
  const places = habits.offsets.map((_, i) => i);
  const air = places.map((i) => recorder.point('air', 'temperature', owner, i));
  const setPoint = recorder.point('set-point', 'temperature', owner);
  const valve = recorder.point('valve', habits.valve === 'on-off' ? 'status' : 'fraction', owner);
  const defrost = recorder.point('defrost', 'status', owner);
  const returnAir = recorder.point('return-air', 'temperature', owner);
  const superheat = recorder.point('superheat', 'temperature-difference', owner);
  const coilOut = recorder.point('coil-out', 'temperature', owner);
  const symptoms = createSymptoms(places.length);
  const shape = createDefrostShape(habits, symptoms, random.branch('defrost'));
  const dwell = random.branch('dwell');
  const noise = random.branch('noise');
  const returnNoise = random.branch('return');
  const held = new Float64Array(places.length);
  const own = new Float64Array(places.length);
  let feeding = true;
  let left = 5;
  let ripple = 0;
  let level = 0;
  let trend = 0;
  let bump = 0;
  let warmth = 0;
  let superheatNow = 5;

  const draw = (mean: number): number => Math.max(1, mean * (0.75 + 0.5 * dwell.next()));
  const dutyNow = (clock: number): number => {
    const open = clock >= habits.openMinute && clock < habits.closeMinute;
    return (open ? habits.dutyByDay : habits.dutyByNight) + 0.06 * trend;
  };

  return {
    air,
    others: [setPoint, valve, defrost, returnAir, superheat, coilOut],
    minute(
      minute: number,
      clock: number,
      weekday: number,
      damp: number,
      suctionShift: number,
      saturated: number,
    ): void {
      clearSymptoms(symptoms);
      for (const apply of symptomsAt) apply(symptoms, minute, clock);
      level = 0.998 * level + 0.012 * random.normal();
      trend = 0.9997 * trend + 0.0245 * 0.5 * random.normal();
      const open = clock >= habits.openMinute && clock < habits.closeMinute;
      if (open && random.chance(habits.stockingsPerDay / 900)) bump = random.between(0.5, 1.8);
      bump *= 0.975;

      const strain = controlStrain(habits, symptoms.rise, symptoms.channel);
      const saved = Math.min(strain, overcooling);
      const duty = dutyNow(clock) + symptoms.dutyAdded + 0.07 * saved + 0.05 * suctionShift + 0.04 * damp;
      const short = Math.max(0, 0.5 * suctionShift - 3 * Math.max(0, 0.95 - dutyNow(clock) - 0.05 * damp));
      const above = Math.max(symptoms.unreachable, short) + strain - saved;

      feeding = nextFeed(minute, duty, above > 0.4);
      shape.advance(clock);
      if (shape.defrosting || symptoms.forced === 'off') feeding = false;
      const off = symptoms.forced === 'off' ? 1 : 0;
      const target =
        symptoms.forced === 'on'
          ? -overcooling
          : habits.class === 'low'
            ? -8 - habits.setPoint
            : 19 - habits.setPoint;
      warmth +=
        ((off === 1 ? target : symptoms.forced === 'on' ? target : above) - warmth) / (off === 1 ? 90 : 45);
      const swingTo = (feeding ? duty - 1 : duty) * habits.ripple * 1.25;
      ripple += (swingTo - ripple) / (habits.periodMinutes * 0.3);
      record(minute, clock, saved, damp, weekday, duty);
      superheatNow += ((feeding ? 4.5 + symptoms.superheatAdded : 13) - superheatNow) / 3;
      if (minute >= 0) {
        superheat.values[minute] = superheatNow + 0.3 * noise.normal();
        coilOut.values[minute] = saturated + superheatNow + 0.2 * noise.normal();
      }
    },
  };

  function meanExcess(): number {
    let sum = 0;
    for (const value of shape.excess) sum += value / places.length;
    return sum;
  }

  function nextFeed(minute: number, duty: number, short: boolean): boolean {
    if (symptoms.forced === 'on' || short || duty >= 1) return true;
    if (symptoms.inStep && habits.valve === 'on-off')
      return (minute + 1440) % symptoms.period < Math.max(1, Math.round(duty * symptoms.period));
    left -= 1;
    if (left > 0) return feeding;
    const period = symptoms.period > 0 ? symptoms.period : habits.periodMinutes;
    const share = Math.min(0.97, Math.max(0.1, duty));
    left = draw(feeding ? period * (1 - share) : period * share);
    return !feeding;
  }

  function record(
    minute: number,
    clock: number,
    saved: number,
    damp: number,
    weekday: number,
    duty: number,
  ): void {
    const busy = weekday === 6 || weekday === 0 ? 0.12 : 0;
    const open = clock >= habits.openMinute && clock < habits.closeMinute ? 1 : 0;
    const quiet = habits.valve === 'modulating' ? 0.25 : 1;
    const common =
      habits.setPoint +
      symptoms.setPointShift +
      level +
      bump +
      warmth +
      open * (0.15 + busy) +
      0.2 * damp -
      saved;
    for (const i of places) {
      const inDefrost = shape.share;
      const rise = symptoms.rise[i]! * (1 - inDefrost + inDefrost * symptoms.riseInDefrost[i]!);
      own[i] = 0.994 * own[i]! + 0.02 * noise.normal();
      const excess = shape.excess[i]!;
      const value =
        common +
        habits.offsets[i]! +
        own[i]! +
        rise +
        quiet * ripple * habits.follows[i]! * symptoms.swing[i]! +
        excess +
        (inDefrost > 0 ? saved * inDefrost : 0);
      const scatter =
        symptoms.scatter[i]! > 0 && noise.chance(0.3) ? symptoms.scatter[i]! * noise.normal() : 0;
      const channel = symptoms.channel[i]!;
      if (channel === 0) held[i] = value;
      if (minute < 0) continue;
      air[i]!.values[minute] =
        channel === 0
          ? value + scatter + habits.noise * noise.normal()
          : channel === 1
            ? held[i]!
            : channel === 2
              ? -60
              : 140;
    }
    if (minute < 0) return;
    const warming = habits.returnGap * (dutyNow(clock) / habits.dutyByDay) * symptoms.returnGap;
    returnAir.values[minute] =
      common + ripple / 2 + (1 - shape.share / 2) * warming + meanExcess() + 0.1 * returnNoise.normal();
    setPoint.values[minute] = habits.setPoint + symptoms.setPointShift;
    defrost.values[minute] = shape.logged ? 1 : 0;
    const position =
      shape.defrosting || symptoms.forced === 'off' ? 0 : Math.min(1, Math.max(0, duty + 0.1 * ripple));
    valve.values[minute] =
      habits.valve === 'modulating' ? (feeding && warmth > 0.4 ? 1 : position) : feeding ? 1 : 0;
  }
}

/** Kelvin by which the control, believing its probes, would pull the line-up down. */
function controlStrain(habits: CircuitHabits, rise: Float64Array, channel: Uint8Array): number {
  if (typeof habits.controls === 'number')
    return channel[habits.controls]! >= 2 ? 0 : Math.max(0, rise[habits.controls]!);
  let sum = 0;
  let most = 0;
  for (let i = 0; i < rise.length; i++) {
    if (channel[i]! >= 2) continue;
    sum += rise[i]!;
    most = Math.max(most, rise[i]!);
  }
  return Math.max(0, habits.controls === 'warmest' ? most : sum / rise.length);
}
