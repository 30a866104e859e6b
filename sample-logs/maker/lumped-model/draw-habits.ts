import type { Random } from '../random.ts';
import type { CircuitWishes, StoreRequest } from '../store-request.ts';
import type { CircuitHabits, GroupHabits, StoreHabits } from './parameters.ts';

const lineUps = [
  ['Yoghurt wall', 2.2],
  ['Butter and spreads', 2.8],
  ['Vegetables', 3.3],
  ['Herbs', 3.9],
  ['Sandwiches', 1.7],
  ['Sausage counter', 0.6],
  ['Minced meat', -0.8],
  ['Fresh fish', -1.1],
  ['Desserts', 2.5],
  ['Ready meals', 1.7],
] as const;
const freezers = [
  ['Frozen bread', -20.5],
  ['Frozen berries', -21.5],
  ['Ice bars', -24.5],
  ['Frozen poultry', -21],
] as const;

/** A store drawn from habits. Shares nothing with the section model but the shape of the request. */
export function drawHabits(random: Random, request: StoreRequest): StoreHabits {
  const lowCircuits = request.lowCircuits ?? random.whole(2, 4);
  const medium = drawGroup(
    random,
    ['S1', 'A', 'medium', 'M'],
    request.mediumCircuits ?? random.whole(6, 10),
    request.first,
    request.floating ?? false,
  );
  const groups = [medium];
  if (lowCircuits > 0)
    groups.push(
      drawGroup(
        random,
        ['S2', 'B', 'low', 'L'],
        lowCircuits,
        { defrostKind: 'electric' },
        request.floating ?? false,
      ),
    );
  return {
    site: request.site ?? 'Simulated store',
    timeZone: request.timeZone ?? 'America/Denver',
    outdoorMean: random.between(6, 25),
    groups,
  };
}

function drawGroup(
  random: Random,
  [id, rack, kind, prefix]: [string, string, 'medium' | 'low', string],
  count: number,
  first: CircuitWishes | undefined,
  floating: boolean,
): GroupHabits {
  const low = kind === 'low';
  return {
    id,
    rack,
    class: kind,
    refrigerant: random.pick(['R-448A', 'R-404A', 'R-407F', 'R-134a', 'R-449A'].slice(0, low ? 3 : 5)),
    saturated: low ? random.between(-33, -29) : random.between(-9.5, -6),
    float: floating ? random.branch(`${id} float`).between(1, 2.5) : 0,
    suctionBand: random.between(1, 2.2),
    machines: random.whole(2, 4),
    dwellMinutes: random.between(7, 15),
    condenserRise: random.between(7, 12),
    liquidLevel: random.between(0.08, 0.5),
    circuits: Array.from({ length: count }, (_, i) =>
      drawCircuit(random, `${prefix}${String(i + 1).padStart(2, '0')}`, kind, i === 0 ? (first ?? {}) : {}),
    ),
  };
}

function drawCircuit(
  random: Random,
  id: string,
  kind: 'medium' | 'low',
  wishes: CircuitWishes,
): CircuitHabits {
  const low = kind === 'low';
  const [name, usual] = random.pick<readonly [string, number]>(low ? freezers : lineUps);
  const setPoint = Math.round((usual + random.between(-0.5, 0.5)) * 2) / 2;
  const places = wishes.sections ?? random.pick([2, 3, 3, 3, 4, 4, 5, 6]);
  const differential = random.pick([1, 1.1, 1.5, 2]);
  const dutyByDay = random.between(0.5, 0.8);
  return {
    id,
    name,
    class: kind,
    setPoint,
    differential,
    controls:
      wishes.controls ??
      (random.chance(0.7) ? 'average' : random.chance(0.5) ? 'warmest' : random.whole(0, places - 1)),
    valve: wishes.valve ?? (random.chance(0.75) ? 'on-off' : 'modulating'),
    offsets: Array.from({ length: places }, () => 0.35 * random.normal()),
    follows: Array.from({ length: places }, () => random.between(0.8, 1.2)),
    ripple: differential + random.between(0.6, 1.6),
    periodMinutes: random.between(9, 22),
    dutyByDay,
    dutyByNight: dutyByDay * (low ? random.between(0.9, 0.97) : random.between(0.68, 0.92)),
    openMinute: random.whole(5, 9) * 60,
    closeMinute: random.whole(19, 23) * 60,
    stockingsPerDay: random.between(0.5, 2.2),
    noise: random.between(0.02, 0.08),
    returnGap: random.branch(`${id} return`).between(low ? 2.5 : 3.8, low ? 5 : 7),
    defrost: drawDefrost(random, low, places, wishes.defrostKind),
    alarm: { high: setPoint + (low ? 6 : random.pick([4.5, 5, 5.5])), minutes: random.pick([30, 45, 60]) },
  };
}

function drawDefrost(
  random: Random,
  low: boolean,
  places: number,
  wished: CircuitHabits['defrost']['kind'] | undefined,
): CircuitHabits['defrost'] {
  const kind =
    wished ??
    (low ? (random.chance(0.6) ? 'electric' : 'hot-gas') : random.chance(0.8) ? 'off-cycle' : 'hot-gas');
  const perDay = low ? random.whole(1, 3) : random.pick([2, 3, 4, 4, 5]);
  const shift = 5 * random.whole(0, 280 / perDay);
  const minutes =
    kind === 'off-cycle'
      ? random.pick([25, 30, 40, 45, 50])
      : kind === 'electric'
        ? random.pick([40, 50])
        : random.pick([18, 22]);
  const usualMinutes =
    kind === 'off-cycle'
      ? random.chance(0.25)
        ? minutes * 0.85
        : minutes
      : minutes * random.between(0.55, 0.75);
  const rise =
    kind === 'off-cycle' ? random.between(9, 13) : low ? random.between(11, 18) : random.between(10, 15);
  return {
    kind,
    starts: Array.from({ length: perDay }, (_, i) => Math.round(shift + (i * 1440) / perDay) % 1440).sort(
      (a, b) => a - b,
    ),
    minutes,
    usualMinutes,
    rise: Array.from({ length: places }, () => rise * random.between(0.9, 1.1)),
    riseMinutes: usualMinutes * random.between(0.35, 0.55),
    dwellMinutes: usualMinutes * random.between(0.1, 0.3),
    delayMinutes: random.between(2, 6),
    recoveryMinutes: random.between(5, 10),
  };
}
