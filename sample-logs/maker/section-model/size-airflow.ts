import type { CircuitParameters } from './parameters.ts';

/**
 * The share of airflow at which section `place` stands `kelvin` above the mean of the others once all is settled,
 * by bisection on the steady heat balance of the line-up with its feed held where the average meets the set point.
 */
export function airflowFor(
  circuit: CircuitParameters,
  saturated: number,
  place: number,
  kelvin: number,
): number {
  let low = 0.08;
  let high = 1;
  for (let i = 0; i < 24; i++) {
    const middle = (low + high) / 2;
    if (localRise(circuit, saturated, place, middle) > kelvin) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function localRise(circuit: CircuitParameters, saturated: number, place: number, airflow: number): number {
  const n = circuit.sections;
  const air = new Float64Array(n).fill(circuit.setPoint);
  let feed = 0.6;
  const store = 21;
  for (let sweep = 0; sweep < 400; sweep++) {
    let mean = 0;
    for (let i = 0; i < n; i++) {
      const coil = circuit.coil[i]! * (i === place ? airflow : 1) * (1 - circuit.frostPenalty * 0.5);
      const series = (coil * circuit.refrigerant * feed) / (coil + circuit.refrigerant * feed);
      const left = air[Math.max(0, i - 1)]!;
      const right = air[Math.min(n - 1, i + 1)]!;
      const load = circuit.infiltration[i]! * 0.95;
      air[i] =
        (load * store + series * saturated + circuit.mixing * (left + right)) /
        (load + series + 2 * circuit.mixing);
      mean += air[i]! / n;
    }
    feed = Math.min(1, Math.max(0.1, feed + 0.02 * (mean - circuit.setPoint)));
  }
  let others = 0;
  for (let i = 0; i < n; i++) if (i !== place) others += air[i]! / (n - 1);
  const healthy = airflow === 1 ? 0 : localRise(circuit, saturated, place, 1);
  return air[place]! - others - healthy;
}
