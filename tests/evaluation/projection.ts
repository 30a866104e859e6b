import type { PlantedFault, SimulatedStore } from '../../sample-logs/maker/simulated-store.ts';
import type { Finding } from '../../src/model/finding.ts';

/**
 * Whether the interval that a finding gave for reaching its limit held the moment at which settled air did reach
 * it (the first whole day whose median is there). A limit never reached within the history is covered when the
 * interval does not end inside it.
 */
export function judgeProjection(
  finding: Finding | null,
  fault: PlantedFault,
  store: SimulatedStore,
): 'covered' | 'missed' | 'none' {
  const projection = finding?.projection;
  if (finding === null || !projection || projection.earliest === null) return 'none';
  const circuit = store.circuits.find(({ id }) => id === fault.circuit);
  if (circuit === undefined) return 'none';
  const endMs = store.startMs + store.count * store.stepMs;
  const crossed = firstCrossing(store, circuit, fault.probe, projection.limit, fault.onset);
  const latest = projection.latest ?? Number.POSITIVE_INFINITY;
  if (crossed === null) return latest >= endMs ? 'covered' : 'missed';
  return projection.earliest <= crossed && crossed <= latest ? 'covered' : 'missed';
}

function firstCrossing(
  store: SimulatedStore,
  circuit: SimulatedStore['circuits'][number],
  place: number | null,
  limit: number,
  fromMs: number,
): number | null {
  const defrost = circuit.others.find((point) => point.role === 'defrost')!.values;
  const day = 1440;
  const settled: number[] = [];
  let since = 0;
  const values = new Float64Array(store.count);
  for (let i = 0; i < store.count; i++) {
    since = defrost[i] === 1 ? 0 : since + 1;
    let value = 0;
    if (place === null) for (const point of circuit.air) value += point.values[i]! / circuit.air.length;
    else value = circuit.air[place]!.values[i]!;
    values[i] = since >= 60 ? value : Number.NaN;
  }
  for (let end = Math.round((fromMs - store.startMs) / store.stepMs) + day; end <= store.count; end += 180) {
    settled.length = 0;
    for (let i = end - day; i < end; i++) if (!Number.isNaN(values[i]!)) settled.push(values[i]!);
    settled.sort((a, b) => a - b);
    if (settled.length > 0 && settled[settled.length >> 1]! >= limit)
      return store.startMs + end * store.stepMs;
  }
  return null;
}
