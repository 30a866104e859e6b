import type { Random } from '../random.ts';
import type { PlantedFault } from '../simulated-store.ts';
import type { FaultName, FaultRequest } from '../store-request.ts';
import type { CircuitDisturbance, GroupDisturbance } from './effects.ts';
import { icedEnd, lyingProbe, suctionRise } from './faults.ts';
import type { CircuitParameters, GroupParameters, StoreParameters } from './parameters.ts';
import { airflowFor } from './size-airflow.ts';

export interface PlannedFault {
  readonly circuit: { readonly id: string; readonly disturb: CircuitDisturbance } | null;
  readonly group: { readonly id: string; readonly disturb: GroupDisturbance } | null;
  /** Times in minutes since the start of the log. */
  readonly truth: Omit<PlantedFault, 'reachedThree'>;
}

interface Scene {
  readonly random: Random;
  readonly days: number;
  readonly group: GroupParameters;
  readonly circuit: CircuitParameters;
  readonly request: FaultRequest;
  readonly place: number;
  readonly onset: number;
  /** Size in kelvin of a local temperature effect. */
  readonly kelvin: number;
  readonly strength: 'full' | 'mild';
}

const fahrenheitStep = 5 / 9;

export function planFault(
  request: FaultRequest,
  store: StoreParameters,
  days: number,
  random: Random,
): PlannedFault {
  const candidates = store.groups.flatMap((group) => group.circuits.map((circuit) => ({ group, circuit })));
  const wanted = candidates.filter(({ circuit }) =>
    request.circuit === undefined
      ? circuit.class === 'medium' && circuit.sections >= 3
      : circuit.id === request.circuit,
  );
  const { group, circuit } = random.pick(wanted.length > 0 ? wanted : candidates);
  const strength = request.strength ?? 'full';
  const fahrenheit = request.size ?? (strength === 'full' ? random.between(4, 8) : random.between(2.5, 4));
  const onsetDay = request.onsetDay ?? random.between(0.3, 0.55) * days;
  return planners[request.fault]({
    random,
    days,
    group,
    circuit,
    request,
    strength,
    place: request.place ?? (random.chance(0.5) ? 0 : circuit.sections - 1),
    onset: Math.round(onsetDay * 1440),
    kelvin: fahrenheit * fahrenheitStep,
  });
}

const planners: { readonly [name in FaultName]: (scene: Scene) => PlannedFault } = {
  'iced-end': (scene) => {
    const { circuit, place, onset, kelvin } = scene;
    const over = Math.round(scene.random.between(8, 14) * 1440);
    const disturb = icedEnd(place, onset, over, airflowFor(circuit, scene.group.target, place, kelvin));
    return onCircuit(scene, disturb, {
      kinds: ['upward-drift', 'probe-disagreement', 'defrost-recovery'],
      origins: ['case'],
      causes: ['airflow-or-ice', 'drain'],
      shape: 'creep',
    });
  },
  'probe-step': (scene) =>
    onCircuit(scene, lyingProbe(scene.place, scene.onset, 0, scene.kelvin), {
      kinds: ['probe-disagreement', 'upward-drift'],
      origins: ['probe'],
      causes: ['probe-offset'],
      shape: 'step',
    }),
  'probe-creep': (scene) => {
    const over = Math.round(scene.random.between(8, 14) * 1440);
    return onCircuit(scene, lyingProbe(scene.place, scene.onset, over, scene.kelvin), {
      kinds: ['probe-disagreement', 'upward-drift'],
      origins: ['probe'],
      causes: ['probe-drift'],
      shape: 'creep',
    });
  },
  'suction-rise': (scene) => {
    const kelvin = scene.random.between(4, 6);
    return {
      circuit: null,
      group: { id: scene.group.id, disturb: suctionRise(scene.onset, 2880, kelvin) },
      truth: {
        ...common(scene),
        circuit: null,
        probe: null,
        kinds: ['rack-pressure'],
        origins: ['rack'],
        causes: ['compressor-control', 'capacity-shortfall', 'set-point'],
        shape: 'step',
        size: kelvin,
      },
    };
  },
};

function common(scene: Scene) {
  return {
    fault: scene.request.fault,
    circuit: scene.circuit.id,
    suctionGroup: scene.group.id,
    probe: scene.place,
    onset: scene.onset,
    end: null,
    size: scene.kelvin,
    sizeUnit: 'K',
    strength: scene.strength,
  };
}

function onCircuit(
  scene: Scene,
  disturb: CircuitDisturbance,
  truth: Pick<PlantedFault, 'kinds' | 'origins' | 'causes' | 'shape'>,
): PlannedFault {
  return { circuit: { id: scene.circuit.id, disturb }, group: null, truth: { ...common(scene), ...truth } };
}
