import type { Grid } from '../../src/model/grid.ts';
import type { Circuit } from '../../src/model/log.ts';
import { circuitOf, recordOf } from './hand-made-log.ts';

/**
 * A case in four lines of physics, so that what a test does to it has the consequences that it has in a store:
 * each section is warmed by the shop and cooled while the valve feeds, the valve opens and shuts on the average
 * of the probes, and in a defrost it is shut. Minutes count from the start, days begin at local midnight.
 */
export interface SimpleCase {
  readonly id?: string;
  readonly suctionGroup?: string | null;
  readonly probes?: number;
  readonly setPoint?: (minute: number) => number;
  readonly differential?: number;
  /** Warming by the shop, per minute: 0.008 climbs some 6 K in a 45-minute defrost. */
  readonly load?: (minute: number, probe: number) => number;
  /** Kelvin a minute while feeding. */
  readonly cooling?: (minute: number, probe: number) => number;
  readonly isDefrosting?: (minute: number) => boolean;
  /** The circuit is switched off: valve shut, no defrosts. */
  readonly isOff?: (minute: number) => boolean;
  /** The valve is held open whatever the air does. */
  readonly isForced?: (minute: number) => boolean;
  /** Added to what the probe shows, and so to what the controller believes. */
  readonly offset?: (minute: number, probe: number) => number;
  readonly shop?: number;
  readonly stepCelsius?: number;
  readonly columns?: { readonly valve?: boolean; readonly status?: boolean; readonly setPoint?: boolean };
  readonly seed?: number;
}

const minutesADay = 1440;

/** True in a defrost of `length` minutes at each of the starts (minutes of the day). */
export const dailyDefrosts = (starts: readonly number[], length: number) => (minute: number) =>
  starts.some((start) => {
    const since = (((minute - start) % minutesADay) + minutesADay) % minutesADay;
    return since < length;
  });

/** Four off-cycle defrosts a day of 45 minutes: a produce line-up (common practice, no source). */
export const produceDefrosts = dailyDefrosts([120, 480, 840, 1200], 45);

export function simpleCase(grid: Grid, options: SimpleCase = {}): Circuit {
  const {
    id = 'M01',
    probes = 3,
    setPoint = () => 2.8,
    differential = 1.1,
    load = () => 0.008,
    cooling = () => 0.35,
    isDefrosting = produceDefrosts,
    isOff = () => false,
    isForced = () => false,
    offset = () => 0,
    shop = 22,
    stepCelsius = 0.1 / 1.8,
    columns = { valve: true, status: true, setPoint: true },
    seed = 1,
  } = options;
  const random = noise(seed);
  const count = grid.count;
  const air = Array.from({ length: probes }, () => new Float64Array(count));
  const valve = new Float64Array(count);
  const status = new Float64Array(count);
  const targets = new Float64Array(count);
  const section = new Float64Array(probes).fill(setPoint(0));
  const shown = new Float64Array(probes).fill(setPoint(0));
  const stepMinutes = grid.stepMs / 60_000;
  let feeding = false;
  for (let minute = 0; minute < count * stepMinutes; minute++) {
    const target = setPoint(minute);
    const defrosting = isDefrosting(minute) && !isOff(minute);
    const mean = shown.reduce((sum, value) => sum + value, 0) / probes;
    if (mean > target + differential / 2) feeding = true;
    else if (mean < target - differential / 2) feeding = false;
    const open = (feeding || isForced(minute)) && !defrosting && !isOff(minute);
    for (let probe = 0; probe < probes; probe++) {
      const warming = load(minute, probe) * (shop - section[probe]!);
      section[probe]! += warming - (open ? cooling(minute, probe) : 0);
      shown[probe]! += (section[probe]! + offset(minute, probe) - shown[probe]!) / 2;
    }
    if (minute % stepMinutes !== 0) continue;
    const i = minute / stepMinutes;
    for (let probe = 0; probe < probes; probe++) {
      const value = shown[probe]! + 0.05 * random();
      air[probe]![i] = Math.round(value / stepCelsius) * stepCelsius;
    }
    valve[i] = open ? 1 : 0;
    status[i] = defrosting ? 1 : 0;
    targets[i] = target;
  }
  const letters = 'ABCDEFGH';
  return circuitOf({
    id,
    suctionGroup: options.suctionGroup ?? null,
    differential,
    setPoint: columns.setPoint ? recordOf(`${id} set`, 'temperature', targets) : null,
    probes: air.map((values, i) =>
      recordOf(`${id} air ${letters[i]}`, 'temperature', values, { resolution: stepCelsius }),
    ),
    valve: columns.valve ? recordOf(`${id} liquid`, 'status', valve) : null,
    defrost: { status: columns.status ? recordOf(`${id} dfr`, 'status', status) : null },
  });
}

/** Seeded noise of about unit spread: four draws of the quick generator of Numerical Recipes, added. */
export function noise(seed: number): () => number {
  let state = seed >>> 0;
  const draw = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32 - 0.5;
  };
  return () => (draw() + draw() + draw() + draw()) * 1.73;
}
