import type { Random } from '../random.ts';
import type { CircuitWishes } from '../store-request.ts';
import { drawCircuit } from './draw-circuit.ts';
import type { CircuitParameters, GroupParameters, StoreParameters } from './parameters.ts';

export interface StoreWishes {
  readonly site?: string;
  readonly timeZone?: string;
  readonly mediumCircuits?: number;
  readonly lowCircuits?: number;
  readonly floating?: boolean;
  /** What the nth medium-temperature circuit must be like. */
  readonly wishes?: readonly CircuitWishes[];
}

const refrigerants = ['R-448A', 'R-449A', 'R-404A', 'R-407A', 'R-507A'] as const;

/** A store whose every circuit has physics of its own. */
export function drawStore(random: Random, wishes: StoreWishes = {}): StoreParameters {
  const storeTemperature = random.between(20, 22.5);
  const medium = drawGroup(
    random,
    'S1',
    'A',
    'medium',
    wishes.mediumCircuits ?? random.whole(6, 10),
    storeTemperature,
    'M',
    wishes.wishes ?? [],
    wishes.floating ?? false,
  );
  const lowCount = wishes.lowCircuits ?? random.whole(3, 4);
  const groups = [medium];
  if (lowCount > 0)
    groups.push(
      drawGroup(
        random,
        'S2',
        'B',
        'low',
        lowCount,
        storeTemperature,
        'L',
        [{ defrostKind: 'electric' }],
        wishes.floating ?? false,
      ),
    );
  return {
    site: wishes.site ?? 'Simulated store',
    timeZone: wishes.timeZone ?? 'America/Denver',
    storeTemperature,
    outdoorMean: random.between(8, 24),
    outdoorSwing: random.between(3, 8),
    groups,
  };
}

function drawGroup(
  random: Random,
  id: string,
  rack: string,
  kind: 'medium' | 'low',
  count: number,
  storeTemperature: number,
  prefix: string,
  wishes: readonly CircuitWishes[],
  floating: boolean,
): GroupParameters {
  const target = kind === 'medium' ? random.between(-9, -7) : random.between(-32, -29);
  const circuits = Array.from({ length: count }, (_, i) =>
    drawCircuit(
      random,
      `${prefix}${String(i + 1).padStart(2, '0')}`,
      { class: kind, saturated: target, storeTemperature },
      wishes[i],
    ),
  );
  const design = circuits.reduce((sum, circuit) => sum + designLoad(circuit, storeTemperature), 0);
  const machines = random.whole(3, 4);
  // Few circuits cannot spread their calls, so a small group needs more in hand.
  const spare = random.between(1.35, 1.6) + 0.7 / count;
  const weights = Array.from({ length: machines }, () => random.between(0.75, 1.25));
  const total = weights.reduce((a, b) => a + b, 0);
  const conductance = circuits.reduce((sum, circuit) => sum + circuit.sections * circuit.refrigerant, 0);
  return {
    id,
    rack,
    class: kind,
    refrigerant: random.pick(refrigerants),
    target,
    float: floating ? random.branch(`${id} float`).between(1.2, 2.4) : 0,
    differential: random.between(1.6, 2.6),
    capacities: weights.map((weight) => (design * spare * weight) / total),
    minimumOffSeconds: 180,
    minimumRunSeconds: 120,
    stageSeconds: random.whole(2, 4) * 30,
    inertia: conductance * random.between(70, 110) * (1 + 2 / count),
    condenserRise: random.between(6, 10),
    condensingFloor: random.between(20, 24),
    liquidLevel: random.between(0.06, 0.45),
    circuits,
  };
}

function designLoad(circuit: CircuitParameters, storeTemperature: number): number {
  let sum = 0;
  for (const conductance of circuit.infiltration) sum += conductance * (storeTemperature - circuit.setPoint);
  return sum;
}
