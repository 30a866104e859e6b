import { bent, minutesItTakes } from '../creep.ts';
import { faultCatalogue } from '../fault-catalogue.ts';
import type { Channel } from '../log-edits.ts';
import type { Random } from '../random.ts';
import type { FaultRequest } from '../store-request.ts';
import type { PlannedTruth } from '../truth-of.ts';
import { type Signs, signsOf } from './fault-symptoms.ts';
import type { CircuitHabits, GroupHabits, StoreHabits } from './parameters.ts';

export interface PlannedFault extends PlannedTruth {
  readonly circuitId: string;
  readonly groupId: string;
  readonly signs: Signs;
}

/** Plans one fault; it strikes none of the circuits `taken`, unless the request names one. */
export function planFault(
  request: FaultRequest,
  habits: StoreHabits,
  days: number,
  random: Random,
  taken: ReadonlySet<string>,
): PlannedFault {
  const { group, circuit } = whereItStrikes(request, habits, random, taken);
  const meaning = faultCatalogue[request.fault];
  const strength = request.strength ?? 'full';
  const places = circuit.offsets.length;
  const ends = request.fault === 'iced-end' || request.fault === 'airflow-blocked';
  const fahrenheit =
    request.size ?? (strength === 'full' ? random.between(4.3, 8) : random.between(2.6, 3.9));
  const day = request.onsetDay ?? random.between(0.3, 0.5) * days;
  const onset = awayFromDefrost(Math.round(day * 1440), circuit);
  const strike = {
    random,
    circuit,
    group,
    strength,
    place: request.place ?? (ends ? random.pick([0, places - 1]) : random.whole(0, places - 1)),
    onset,
    over: minutesItTakes(request, random.between(7, 13), days * 1440 - onset),
    kelvin: fahrenheit / 1.8,
  };
  const signs = signsOf[request.fault](strike);
  const { circuit: symptom } = signs;
  return {
    circuitId: circuit.id,
    groupId: group.id,
    signs:
      symptom === undefined
        ? signs
        : { ...signs, circuit: bent(symptom, strike.onset, strike.over, request.bend) },
    swappedWith: request.fault === 'probes-swapped' ? partnerOf(circuit, group, random, taken) : null,
    truth: {
      fault: request.fault,
      circuit: meaning.scope === 'group' ? null : circuit.id,
      suctionGroup: group.id,
      probe: meaning.scope === 'place' ? strike.place : null,
      kinds: meaning.kinds,
      origins: meaning.origins,
      causes: meaning.causes,
      onset: strike.onset,
      end: null,
      shape: meaning.shape,
      size: signs.size ?? strike.kelvin,
      sizeUnit: signs.sizeUnit ?? 'K',
      strength,
    },
  };
}

function whereItStrikes(
  request: FaultRequest,
  habits: StoreHabits,
  random: Random,
  taken: ReadonlySet<string>,
): { group: GroupHabits; circuit: CircuitHabits } {
  const all = habits.groups.flatMap((group) => group.circuits.map((circuit) => ({ group, circuit })));
  const named = all.find(({ group, circuit }) => circuit.id === request.on || group.id === request.on);
  if (named !== undefined) return named;
  const local = faultCatalogue[request.fault].scope === 'place';
  const fits = all.filter(({ circuit }) => {
    if (taken.has(circuit.id)) return false;
    if (request.fault === 'heater-failed') return circuit.defrost.kind === 'electric';
    if (request.fault === 'termination-failed') return circuit.defrost.kind !== 'off-cycle';
    if (request.fault === 'door-ajar') return true;
    if (request.fault === 'valve-short-cycle' && circuit.valve !== 'on-off') return false;
    return circuit.class === 'medium' && (!local || circuit.offsets.length >= 3);
  });
  if (fits.length === 0)
    throw new Error(`No circuit of this store can have ${request.fault}; try another seed.`);
  return random.pick(fits);
}

function awayFromDefrost(minute: number, circuit: CircuitHabits): number {
  let at = minute;
  while (circuit.defrost.starts.some((start) => (at - start + 2880) % 1440 < 110) && at < minute + 360) at++;
  return at;
}

/** A probe of another circuit of the group, for a swap. */
function partnerOf(
  circuit: CircuitHabits,
  group: GroupHabits,
  random: Random,
  taken: ReadonlySet<string>,
): Channel {
  const others = group.circuits.filter(({ id }) => id !== circuit.id && !taken.has(id));
  const other = random.pick(others);
  return { circuit: other.id, place: random.whole(0, other.offsets.length - 1) };
}
