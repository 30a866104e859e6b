import type { Random } from '../../sample-logs/maker/random.ts';
import type { PlantedFault, SimulatedStore } from '../../sample-logs/maker/simulated-store.ts';
import type { Diagnosis, Finding } from '../../src/model/finding.ts';
import { pointName } from './analyse.ts';
import type { EvaluationCase } from './cases.ts';
import { findingFor } from './match.ts';

const dayMs = 86_400_000;

/** What a date for reaching the limit was worth. Days count from the cut; a limit never reached has none. */
export interface ProjectionOutcome {
  readonly verdict: 'covered' | 'too-early' | 'too-late' | 'none';
  /** Days of history at the cut, and since the onset of the fault. */
  readonly historyDays: number;
  readonly sinceOnset: number;
  readonly said: {
    readonly at: number | null;
    readonly earliest: number;
    readonly latest: number | null;
  } | null;
  readonly truth: number | null;
  readonly reason: string | null;
}

/**
 * Whether the interval that a finding gave for reaching its limit held the moment at which settled air did reach
 * it (the first whole day whose median is there). A limit never reached within the history is covered when the
 * interval does not end inside it. `too-early`: the interval ended before the limit was reached.
 *
 * @returns null where the limit had been reached before the cut: that is no forecast
 */
export function judgeProjection(
  finding: Finding | null,
  fault: PlantedFault,
  store: SimulatedStore,
  dialect: EvaluationCase['dialect'],
  cutMs: number,
): ProjectionOutcome | null {
  const seen = { historyDays: (cutMs - store.startMs) / dayMs, sinceOnset: (cutMs - fault.onset) / dayMs };
  const projection = finding?.projection ?? null;
  const circuit = store.circuits.find(({ id }) => id === fault.circuit);
  if (finding === null || projection === null || circuit === undefined)
    return { ...seen, verdict: 'none', said: null, truth: null, reason: null };
  const place = circuit.air.findIndex((point) => pointName(point, dialect) === finding.probe);
  const crossed = firstCrossing(store, circuit, place < 0 ? null : place, projection.limit, fault.onset);
  if (crossed !== null && crossed <= cutMs) return null;
  const ahead = (at: number | null): number | null => (at === null ? null : (at - cutMs) / dayMs);
  const truth = ahead(crossed);
  if (projection.earliest === null)
    return { ...seen, verdict: 'none', said: null, truth, reason: projection.reason };
  const said = {
    at: ahead(projection.at),
    earliest: ahead(projection.earliest)!,
    latest: ahead(projection.latest),
  };
  const until = truth ?? (store.startMs + store.count * store.stepMs - cutMs) / dayMs;
  const verdict =
    said.latest !== null && said.latest < until
      ? 'too-early'
      : truth !== null && truth < said.earliest
        ? 'too-late'
        : 'covered';
  return { ...seen, verdict, said, truth, reason: null };
}

const firstDay = 4;
const mostCuts = 4;

/**
 * One forecast of one creep, at a cut drawn from the days between its onset and the day on which its limit is reached: the first
 * of some drawn cuts at which a date is given, so that the trials of different faults are independent. `cuts` says how many gave
 * none, for which reason.
 */
export function forecastTrial(
  fault: PlantedFault,
  store: SimulatedStore,
  dialect: EvaluationCase['dialect'],
  random: Random,
  cut: (untilMs: number) => Diagnosis,
): { readonly outcome: ProjectionOutcome | null; readonly undated: readonly string[] } {
  const circuit = store.circuits.find(({ id }) => id === fault.circuit)!;
  const endMs = store.startMs + store.count * store.stepMs;
  const reached = firstCrossing(store, circuit, fault.probe, circuit.limits.high, fault.onset) ?? endMs;
  const undated: string[] = [];
  for (let i = 0; i < mostCuts; i++) {
    const untilMs = random.between(
      fault.onset + firstDay * dayMs,
      Math.max(fault.onset + firstDay * dayMs, reached),
    );
    const finding = findingFor(cut(untilMs).findings, fault);
    const outcome = judgeProjection(finding, fault, store, dialect, untilMs);
    if (outcome === null) continue;
    if (outcome.verdict !== 'none') return { outcome, undated };
    undated.push(outcome.reason ?? (finding === null ? 'not found yet' : 'no projection'));
  }
  return { outcome: null, undated };
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
    const settled = values.subarray(end - day, end).filter((value) => !Number.isNaN(value));
    settled.sort();
    if (settled.length > 0 && settled[settled.length >> 1]! >= limit)
      return store.startMs + end * store.stepMs;
  }
  return null;
}
