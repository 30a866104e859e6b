import { bent, minutesItTakes } from '../../creep.ts';
import { faultCatalogue } from '../../fault-catalogue.ts';
import type { Channel } from '../../log-edits.ts';
import type { Random } from '../../random.ts';
import type { FaultRequest } from '../../store-request.ts';
import type { PlannedTruth } from '../../truth-of.ts';
import type { CircuitDisturbance, GroupDisturbance } from '../effects.ts';
import type { CircuitParameters, GroupParameters, StoreParameters } from '../parameters.ts';
import { planners } from './planners.ts';

const fusionHeat = 335e3;

/** Where and how strongly a fault strikes; times in minutes since the start of the log, sizes in kelvin. */
export interface Scene {
  readonly random: Random;
  readonly group: GroupParameters;
  readonly circuit: CircuitParameters;
  readonly strength: 'full' | 'mild';
  readonly place: number;
  readonly onset: number;
  /** Minutes a creeping fault takes. */
  readonly over: number;
  readonly kelvin: number;
}

export interface Disturbances {
  readonly circuits: readonly { readonly id: string; readonly disturb: CircuitDisturbance }[];
  readonly groups: readonly { readonly id: string; readonly disturb: GroupDisturbance }[];
}

export interface PlannedFault extends Disturbances, PlannedTruth {}

/** Plans one fault; it strikes none of the circuits `taken`, unless the request names one. */
export function planFault(
  request: FaultRequest,
  store: StoreParameters,
  days: number,
  random: Random,
  taken: ReadonlySet<string>,
): PlannedFault {
  const meaning = faultCatalogue[request.fault];
  const { group, circuit } = chooseCircuit(request, store, random, taken);
  const strength = request.strength ?? 'full';
  const fahrenheit = request.size ?? (strength === 'full' ? random.between(4.5, 8) : random.between(2.6, 4));
  const atEnd = request.fault === 'iced-end' || request.fault === 'airflow-blocked';
  const onset = settledMinute(
    Math.round((request.onsetDay ?? random.between(0.3, 0.5) * days) * 1440),
    circuit,
  );
  const scene: Scene = {
    random,
    group,
    circuit,
    strength,
    place:
      request.place ??
      (atEnd ? (random.chance(0.5) ? 0 : circuit.sections - 1) : random.whole(0, circuit.sections - 1)),
    onset,
    over: minutesItTakes(request, random.between(8, 14), days * 1440 - onset),
    kelvin: (fahrenheit * 5) / 9,
  };
  const { disturb, disturbAll, disturbEach, disturbGroup, size, sizeUnit } = planners[request.fault](scene);
  const struck = (one: CircuitDisturbance | undefined, circuits: readonly CircuitParameters[]) =>
    one === undefined
      ? []
      : circuits.map(({ id }) => ({ id, disturb: bent(one, onset, scene.over, request.bend) }));
  return {
    circuits: [
      ...struck(disturb, [circuit]),
      ...struck(disturbAll, group.circuits),
      ...group.circuits.flatMap((one) => struck(disturbEach?.(one), [one])),
    ],
    groups: disturbGroup === undefined ? [] : [{ id: group.id, disturb: disturbGroup }],
    swappedWith: request.fault === 'probes-swapped' ? partnerOf(circuit, group, random, taken) : null,
    truth: {
      fault: request.fault,
      circuit: meaning.scope === 'group' ? null : circuit.id,
      suctionGroup: group.id,
      probe: meaning.scope === 'place' ? scene.place : null,
      kinds: meaning.kinds,
      origins: meaning.origins,
      causes: meaning.causes,
      onset: scene.onset,
      end: null,
      shape: meaning.shape,
      size: size ?? scene.kelvin,
      sizeUnit: sizeUnit ?? 'K',
      strength,
    },
  };
}

/** Draws the circuit (and with it the group) that the fault can strike. */
function chooseCircuit(
  request: FaultRequest,
  store: StoreParameters,
  random: Random,
  taken: ReadonlySet<string>,
) {
  const all = store.groups.flatMap((group) => group.circuits.map((circuit) => ({ group, circuit })));
  const named = all.filter(({ group, circuit }) => circuit.id === request.on || group.id === request.on);
  if (named.length > 0) return named[0]!;
  const { scope } = faultCatalogue[request.fault];
  const able = all.filter(({ circuit }) => {
    if (taken.has(circuit.id)) return false;
    const { defrost } = circuit;
    switch (request.fault) {
      case 'heater-failed':
        return defrost.kind === 'electric';
      case 'termination-failed':
        return defrost.kind !== 'off-cycle' && endsByTemperature(circuit);
      case 'valve-short-cycle':
        return circuit.valve === 'on-off' && circuit.class === 'medium';
      case 'door-ajar':
        return true;
      case 'defrost-missed':
        return defrost.starts.length >= 2;
      default:
        return circuit.class === 'medium' && (scope !== 'place' || circuit.sections >= 3);
    }
  });
  if (able.length === 0)
    throw new Error(`No circuit of this store can have ${request.fault}; try another seed.`);
  return random.pick(able);
}

/**
 * Whether the coil is warm enough to end its defrost within the longest time, by the heat that it takes to warm the wall
 * and to melt half of the usual frost: where the clock ends them anyway, a lost termination changes nothing.
 */
function endsByTemperature({ defrost, wallMass, usualFrost, setPoint }: CircuitParameters): boolean {
  if (defrost.endsAt === null) return false;
  const coldest = setPoint - 8;
  const needed = wallMass * (defrost.endsAt - coldest) + fusionHeat * usualFrost;
  return needed < 0.9 * defrost.heat * defrost.minutes * 60;
}

/** The next minute at which no defrost has started for two hours: a channel sticks at a value of its working day. */
function settledMinute(minute: number, circuit: CircuitParameters): number {
  const { starts } = circuit.defrost;
  const sinceStart = (at: number): number => Math.min(...starts.map((start) => (at - start + 1440) % 1440));
  let settled = minute;
  while (sinceStart(settled % 1440) < 120 && settled < minute + 360) settled++;
  return settled;
}

/** A probe of another circuit of the group, for a swap. */
function partnerOf(
  circuit: CircuitParameters,
  group: GroupParameters,
  random: Random,
  taken: ReadonlySet<string>,
): Channel {
  const others = group.circuits.filter(({ id }) => id !== circuit.id && !taken.has(id));
  const other = random.pick(others);
  return { circuit: other.id, place: random.whole(0, other.sections - 1) };
}
