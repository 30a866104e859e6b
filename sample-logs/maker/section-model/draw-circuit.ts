import type { Random } from '../random.ts';
import type { CircuitWishes } from '../store-request.ts';
import type { CircuitParameters, DefrostParameters } from './parameters.ts';

const mediumNames = [
  ['Dairy', 34],
  ['Milk and eggs', 34],
  ['Deli', 34],
  ['Packed salads', 35],
  ['Produce', 37],
  ['Cut fruit', 36],
  ['Fresh meat', 30],
  ['Poultry', 30],
  ['Cheese', 36],
  ['Beverages', 38],
  ['Bakery cream', 35],
  ['Juice', 36],
] as const;
const lowNames = [
  ['Frozen vegetables', -8],
  ['Ice cream', -13],
  ['Frozen meals', -8],
  ['Frozen fish', -7],
  ['Frozen pizza', -6],
] as const;

const celsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;

const sublimationHeat = 2.833e6;
const fusionHeat = 335e3;

/** One line-up with physics of its own, within the ranges of the trade. `saturated` is its group's target, Celsius. */
export function drawCircuit(
  random: Random,
  id: string,
  group: { class: 'medium' | 'low'; saturated: number; storeTemperature: number },
  wishes: CircuitWishes = {},
): CircuitParameters {
  const low = group.class === 'low';
  const [name, usualSetPoint] = random.pick<readonly [string, number]>(low ? lowNames : mediumNames);
  const setPoint = celsius(usualSetPoint + random.whole(-1, 1));
  const sections = wishes.sections ?? random.pick(low ? [2, 3, 3, 4] : [2, 3, 3, 3, 4, 4, 5]);
  const coil = random.between(480, 680);
  const refrigerant = random.between(450, 650);
  const series = (coil * refrigerant) / (coil + refrigerant);
  const duty = low ? random.between(0.45, 0.6) : random.between(0.46, 0.7) - (setPoint < 0 ? 0.12 : 0);
  const design = (duty * series * (setPoint - group.saturated)) / (group.storeTemperature - setPoint);
  const each = (mean: number, spread: number): Float64Array =>
    Float64Array.from({ length: sections }, () => mean * (1 + spread * random.normal()));
  const differential = (random.pick([1.5, 2, 2, 2, 3, 4]) * 5) / 9;
  const defrost = drawDefrost(random, low, wishes.defrostKind);
  const wallMass = 1000 * random.between(70, 120);
  const dewLoad =
    (design * (group.storeTemperature - setPoint) * (86_400 / defrost.starts.length)) / sublimationHeat;
  const latentShare = Math.min(
    random.between(0.2, 0.35) * (low ? 0.5 : 1),
    (0.5 * meltable(defrost, coil, wallMass, setPoint)) / dewLoad,
  );
  return {
    id,
    name: `${name} line-up`,
    class: group.class,
    sections,
    setPoint,
    differential,
    controls: wishes.controls ?? (random.chance(0.75) ? 'average' : random.chance(0.5) ? 'warmest' : 0),
    valve: wishes.valve ?? (random.chance(0.78) ? 'on-off' : 'modulating'),
    airMass: 1000 * random.between(60, 110),
    wallMass,
    goodsMass: 1000 * random.between(450, 1150),
    linerMass: 1000 * random.between(180, 420),
    coil: each(coil, 0.03),
    refrigerant,
    goods: random.between(60, 150),
    liner: random.between(110, 170),
    mixing: random.between(20, 70),
    infiltration: each(design, 0.035),
    latentShare,
    frostPenalty: random.between(0.15, 0.35),
    usualFrost: Math.max(0.3, latentShare * dewLoad),
    fillSeconds: random.between(30, 55),
    probeSeconds: random.between(60, 180),
    probeOffsets: Float64Array.from({ length: sections }, () => 0.25 * random.normal()),
    probeNoise: 0.045,
    returnRise: low ? random.between(2.5, 5) : random.between(3.8, 7),
    superheat: random.between(3.2, 5.2),
    nightLoad: low ? random.between(0.85, 0.95) : random.between(0.6, 0.9),
    openMinute: 60 * random.whole(6, 8),
    closeMinute: 60 * random.whole(20, 23),
    stocking: Array.from(
      { length: random.whole(1, 3) },
      () => 60 * random.whole(6, 20) + random.whole(0, 59),
    ),
    stockingRise: random.between(0.1, 0.45),
    defrost,
    alarm: {
      high: low ? setPoint + 5.6 : Math.max(celsius(44), setPoint + 4.4),
      minutes: random.pick([30, 60, 60, 90]),
    },
  };
}

/** Frost that one defrost can clear from a section, kg: a healthy line-up starts every interval clean. */
function meltable(defrost: DefrostParameters, coil: number, wallMass: number, setPoint: number): number {
  const heat = defrost.kind === 'off-cycle' ? 0.8 * coil * 3.7 : defrost.heat;
  return Math.max(0.5, (heat * defrost.minutes * 60 - wallMass * (5 - setPoint)) / fusionHeat);
}

function drawDefrost(
  random: Random,
  low: boolean,
  wished: DefrostParameters['kind'] | undefined,
): DefrostParameters {
  const kind =
    wished ??
    (low ? (random.chance(0.7) ? 'electric' : 'hot-gas') : random.chance(0.85) ? 'off-cycle' : 'hot-gas');
  const perDay = low
    ? random.pick([1, 2, 2, 3])
    : random.pick(kind === 'hot-gas' ? [2, 3, 4] : [3, 4, 4, 4, 6]);
  const first = 10 * random.whole(0, Math.floor(144 / perDay) - 1);
  const starts = Array.from(
    { length: perDay },
    (_, i) => (first + Math.round((i * 1440) / perDay)) % 1440,
  ).sort((a, b) => a - b);
  if (kind === 'off-cycle') {
    const minutes = perDay >= 6 ? random.pick([20, 25, 30]) : random.pick([30, 35, 40, 45, 45]);
    return {
      kind,
      starts,
      minutes,
      endsAt: random.chance(0.3) ? celsius(random.between(42, 46)) : null,
      dripMinutes: 0,
      heat: 0,
      fansRun: true,
    };
  }
  const electric = kind === 'electric';
  return {
    kind,
    starts,
    minutes: electric ? random.pick([40, 45, 50]) : random.pick([20, 25]),
    endsAt: celsius(electric ? random.between(48, 58) : random.between(50, 65)),
    dripMinutes: random.whole(2, electric ? 8 : 5),
    heat: electric ? random.between(2300, 3200) : random.between(2600, 3600),
    fansRun: !electric && !low,
  };
}
