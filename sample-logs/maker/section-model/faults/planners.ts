import type { FaultName } from '../../fault-catalogue.ts';
import type { CircuitDisturbance, GroupDisturbance } from '../effects.ts';
import type { CircuitParameters } from '../parameters.ts';
import * as circuitFault from './circuit.ts';
import * as groupFault from './group.ts';
import * as placeFault from './place.ts';
import type { Scene } from './plan.ts';
import { airflowFor, airflowForAll, feedFor, feedForDuty, leakFor, loadFor } from './sizes.ts';

export interface Planned {
  readonly disturb?: CircuitDisturbance;
  /** What happens to every circuit of the group. */
  readonly disturbAll?: CircuitDisturbance;
  /** What happens to each circuit of the group, by what it is. */
  readonly disturbEach?: (circuit: CircuitParameters) => CircuitDisturbance;
  readonly disturbGroup?: GroupDisturbance;
  /** Where it is not the scene's kelvin. */
  readonly size?: number;
  readonly sizeUnit?: string;
}

const forever = Number.POSITIVE_INFINITY;

export const planners: { readonly [name in FaultName]: (scene: Scene) => Planned } = {
  'iced-end': ({ circuit, group, place, onset, over, kelvin }) => ({
    disturb: placeFault.icedEnd(place, onset, over, airflowFor(circuit, group.target, place, kelvin)),
  }),
  'fan-failed': ({ circuit, group, place, onset, kelvin }) => ({
    disturb: placeFault.lostAirflow(place, onset, 0, airflowFor(circuit, group.target, place, kelvin)),
  }),
  'airflow-blocked': ({ circuit, group, place, onset, over, kelvin }) => ({
    disturb: placeFault.lostAirflow(place, onset, over, airflowFor(circuit, group.target, place, kelvin)),
  }),
  'probe-step': ({ place, onset, kelvin }) => ({ disturb: placeFault.lyingProbe(place, onset, 0, kelvin) }),
  'probe-creep': ({ place, onset, over, kelvin }) => ({
    disturb: placeFault.lyingProbe(place, onset, over, kelvin),
  }),
  'probe-flutter': ({ place, onset, strength, random }) => {
    const size = strength === 'full' ? random.between(1.5, 3) : random.between(0.6, 1);
    return { disturb: placeFault.flutteringProbe(place, onset, size), size };
  },
  'probe-stuck': ({ place, onset }) => ({ disturb: placeFault.failedProbe(place, onset, 'stuck'), size: 0 }),
  'probe-open': ({ place, onset, random }) => ({
    disturb: placeFault.failedProbe(place, onset, random.chance(0.6) ? 'open' : 'short'),
    size: 40,
  }),
  'probe-moved': ({ circuit, place, onset, kelvin }) => ({
    disturb: placeFault.movedProbe(place, onset, Math.min(1, kelvin / circuit.returnRise)),
  }),
  'probes-swapped': () => ({ size: 0 }),
  underfeed: ({ circuit, group, onset, over, kelvin }) => ({
    disturb: circuitFault.starvedCoil(onset, over, feedFor(circuit, group.target, kelvin)),
  }),
  'circuit-drift': ({ circuit, group, onset, over, kelvin }) => ({
    disturb: circuitFault.dirtyCoil(onset, over, airflowForAll(circuit, group.target, kelvin)),
  }),
  'recovery-lengthening': ({ circuit, group, onset, over, strength }) => ({
    disturb: circuitFault.starvedCoil(
      onset,
      over,
      feedForDuty(circuit, group.target, strength === 'full' ? 1.04 : 0.98),
    ),
    size: strength === 'full' ? 1 : 0.5,
    sizeUnit: '1',
  }),
  'defrost-missed': ({ circuit, onset, strength }) => {
    const { starts } = circuit.defrost;
    const keep = strength === 'full' ? Math.floor(starts.length / 4) : Math.max(1, starts.length - 1);
    const kept = new Set(starts.slice(0, keep));
    return {
      disturb: circuitFault.missedDefrosts(onset, starts, (start) => kept.has(start)),
      size: 1 - keep / starts.length,
      sizeUnit: '1',
    };
  },
  'heater-failed': ({ onset, strength }) => {
    const left = strength === 'full' ? 0.3 : 0.55;
    return { disturb: circuitFault.weakHeater(onset, left), size: 1 - left, sizeUnit: '1' };
  },
  'termination-failed': ({ onset }) => ({
    disturb: circuitFault.deafTermination(onset),
    size: 1,
    sizeUnit: '1',
  }),
  'valve-short-cycle': ({ onset, strength }) => ({
    disturb: circuitFault.pulsedValve(onset, strength === 'full' ? 3 : 4.5),
    size: strength === 'full' ? 3 : 4.5,
    sizeUnit: 'min',
  }),
  'set-point-left': ({ onset, strength, random }) => {
    const fahrenheit =
      (strength === 'full' ? random.between(3, 4.5) : random.between(1.5, 2.5)) * random.pick([-1, 1]);
    const kelvin = (fahrenheit * 5) / 9;
    const end = onset + random.whole(90, 180);
    return { disturb: circuitFault.workedOn(onset, end, forever, kelvin), size: Math.abs(kelvin) };
  },
  'clock-reset': ({ onset, strength, random }) => {
    const minutes =
      (strength === 'full' ? random.whole(100, 180) : random.whole(60, 95)) * random.pick([-1, 1]);
    return {
      disturbAll: circuitFault.clockAhead(onset, minutes),
      size: Math.abs(minutes),
      sizeUnit: 'min',
    };
  },
  'circuits-in-step': ({ onset, strength }) => {
    const period = strength === 'full' ? 6 : 8;
    return {
      disturbAll: circuitFault.pulsedInStep(period, (minute) => minute >= onset),
      size: period,
      sizeUnit: 'min',
    };
  },
  'float-frozen': ({ group, onset, random }) => {
    if (group.float === 0)
      throw new Error(`The target of ${group.id} does not float: ask for a floating store.`);
    const share = random.between(0.35, 0.65);
    return { disturbGroup: groupFault.frozenFloat(onset, share * group.float), size: group.float };
  },
  'suction-target-left': ({ onset, strength, random }) => {
    const size = strength === 'full' ? random.between(3, 4.5) : random.between(1.8, 2.5);
    const end = onset + random.whole(90, 200);
    const visit = groupFault.serviceVisit(onset, end);
    const left = groupFault.movedTarget(end, size * random.pick([-1, 1]));
    return {
      disturbAll: circuitFault.forced('off', onset + 5, end),
      disturbGroup: (effects, minute) => {
        visit(effects, minute);
        left(effects, minute);
      },
      size,
    };
  },
  'left-off': ({ onset }) => ({ disturb: circuitFault.forced('off', onset, forever), size: 15 }),
  'override-on': ({ onset }) => ({ disturb: circuitFault.forced('on', onset, forever), size: 4 }),
  'door-ajar': ({ circuit, group, onset, kelvin }) => ({
    disturb: circuitFault.doorAjar(onset, loadFor(circuit, group.target, kelvin)),
  }),
  'local-leak': ({ circuit, group, place, onset, kelvin, random }) => {
    const airflow = random.chance(0.5) ? 1 : random.between(0.65, 0.9);
    const leak = leakFor(circuit, group.target, place, kelvin, airflow);
    return { disturb: placeFault.leakingEnd(place, onset, leak, random.between(0, 1), airflow) };
  },
  'compressor-short-cycle': ({ onset, strength }) => ({
    disturbGroup: groupFault.tightSuctionBand(onset, strength === 'full' ? 1.75 : 2.75),
    size: strength === 'full' ? 1.75 : 2.75,
    sizeUnit: 'min',
  }),
  'low-pressure-trips': ({ onset }) => ({
    disturbGroup: groupFault.lowPressureTrips(onset, 75),
    size: 1,
    sizeUnit: '1',
  }),
  'suction-rise': ({ onset, over, strength, random }) => {
    const size = strength === 'full' ? random.between(4, 6) : random.between(2.2, 3.2);
    return { disturbGroup: groupFault.suctionRise(onset, over / 3, size), size };
  },
  'capacity-shortfall': ({ group, onset, strength }) => {
    const design = group.circuits.reduce(
      (sum, circuit) => sum + circuit.infiltration.reduce((a, b) => a + b, 0) * (21 - circuit.setPoint),
      0,
    );
    const capacity = group.capacities.reduce((a, b) => a + b, 0);
    const left = ((strength === 'full' ? 0.78 : 0.88) * design) / capacity;
    return { disturbGroup: groupFault.lostCapacity(onset, left), size: 1 - left, sizeUnit: '1' };
  },
  'low-charge': ({ group, onset, over, strength, random }) => {
    const duty = strength === 'full' ? 1.12 : 1.02;
    const shares = group.circuits.map((circuit) => feedForDuty(circuit, group.target, duty));
    const left = shares.sort((a, b) => a - b)[shares.length >> 1]!;
    return {
      disturbEach: () => circuitFault.starvedCoil(onset, over, left * random.between(0.92, 1.08)),
      disturbGroup: groupFault.leakingReceiver(onset, over),
      size: 1 - left,
      sizeUnit: '1',
    };
  },
  'condensing-high': ({ onset, strength, random }) => {
    const size = strength === 'full' ? random.between(8, 12) : random.between(5, 7);
    return { disturbGroup: groupFault.dirtyCondenser(onset, size), size };
  },
};
