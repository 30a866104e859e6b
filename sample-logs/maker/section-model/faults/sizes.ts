import type { CircuitParameters } from '../parameters.ts';

const store = 21;
const usualFrost = 0.5;

/** Air-to-refrigerant conductance of one section at which the open valve just holds `air`, W/K. */
function conductanceThatHolds(circuit: CircuitParameters, saturated: number, air: number): number {
  let load = 0;
  for (const section of circuit.infiltration) load += section / circuit.sections;
  const dayLoad = load * (0.35 * circuit.nightLoad + 0.65);
  return (dayLoad * (store - air)) / Math.max(0.5, air - saturated);
}

function cleanCoil(circuit: CircuitParameters): number {
  let coil = 0;
  for (const section of circuit.coil) coil += section / circuit.sections;
  return coil * (1 - circuit.frostPenalty * usualFrost);
}

/** Share of the feed at which the whole line-up settles `kelvin` above its set point with the valve open. */
export function feedFor(circuit: CircuitParameters, saturated: number, kelvin: number): number {
  const series = conductanceThatHolds(circuit, saturated, circuit.setPoint + kelvin);
  const coil = cleanCoil(circuit);
  return clamp((series * coil) / Math.max(1, coil - series) / circuit.refrigerant);
}

/** Share of the airflow at which the whole line-up settles `kelvin` above its set point with the valve open. */
export function airflowForAll(circuit: CircuitParameters, saturated: number, kelvin: number): number {
  const series = conductanceThatHolds(circuit, saturated, circuit.setPoint + kelvin);
  return clamp(
    (series * circuit.refrigerant) / Math.max(1, circuit.refrigerant - series) / cleanCoil(circuit),
  );
}

/** Extra infiltration, times the usual, at which the whole line-up settles `kelvin` above its set point with the valve open. */
export function loadFor(circuit: CircuitParameters, saturated: number, kelvin: number): number {
  const coil = cleanCoil(circuit);
  const series = (coil * circuit.refrigerant) / (coil + circuit.refrigerant);
  const held = conductanceThatHolds(circuit, saturated, circuit.setPoint + kelvin);
  return Math.max(0.2, series / held - 1);
}

/** Share of the feed that leaves the valve open `duty` of the time by day. */
export function feedForDuty(circuit: CircuitParameters, saturated: number, duty: number): number {
  const series = conductanceThatHolds(circuit, saturated, circuit.setPoint) / duty;
  const coil = cleanCoil(circuit);
  return clamp((series * coil) / Math.max(1, coil - series) / circuit.refrigerant);
}

/**
 * The share of airflow at which section `place` stands `kelvin` above the mean of the others once all is settled,
 * by bisection on the steady heat balance with the feed held where the average meets the set point.
 */
export function airflowFor(
  circuit: CircuitParameters,
  saturated: number,
  place: number,
  kelvin: number,
): number {
  const healthy = localRise(circuit, saturated, place, sound);
  return bisect(
    0.05,
    1,
    (airflow) => localRise(circuit, saturated, place, { airflow, leak: 0 }) - healthy < kelvin,
  );
}

/** The same by store air that enters there, times the usual infiltration, with `airflow` of the usual over its coil. */
export function leakFor(
  circuit: CircuitParameters,
  saturated: number,
  place: number,
  kelvin: number,
  airflow: number,
): number {
  const healthy = localRise(circuit, saturated, place, sound);
  return bisect(0, 6, (leak) => localRise(circuit, saturated, place, { airflow, leak }) - healthy > kelvin);
}

/** Where `above` turns true, between two ends. */
function bisect(from: number, to: number, above: (value: number) => boolean): number {
  let low = from;
  let high = to;
  for (let i = 0; i < 20; i++) {
    const middle = (low + high) / 2;
    if (above(middle)) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

interface Section {
  /** Share of the usual. */
  readonly airflow: number;
  /** Times the usual infiltration. */
  readonly leak: number;
}
const sound: Section = { airflow: 1, leak: 0 };

function localRise(
  circuit: CircuitParameters,
  saturated: number,
  place: number,
  { airflow, leak }: Section,
): number {
  const n = circuit.sections;
  const air = new Float64Array(n).fill(circuit.setPoint);
  let feed = 0.6;
  for (let sweep = 0; sweep < 300; sweep++) {
    let mean = 0;
    for (let i = 0; i < n; i++) {
      const coil = circuit.coil[i]! * (i === place ? airflow : 1) * (1 - circuit.frostPenalty * usualFrost);
      const series = (coil * circuit.refrigerant * feed) / (coil + circuit.refrigerant * feed);
      const beside = air[Math.max(0, i - 1)]! + air[Math.min(n - 1, i + 1)]!;
      const load = circuit.infiltration[i]! * (0.95 + (i === place ? leak : 0));
      air[i] =
        (load * store + series * saturated + circuit.mixing * beside) / (load + series + 2 * circuit.mixing);
      mean += air[i]! / n;
    }
    feed = Math.min(1, Math.max(0.1, feed + 0.02 * (mean - circuit.setPoint)));
  }
  let others = 0;
  for (let i = 0; i < n; i++) if (i !== place) others += air[i]! / (n - 1);
  return air[place]! - others;
}

function clamp(share: number): number {
  return Math.min(1, Math.max(0.08, share));
}
