import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { samplesIn, timeAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../../signals/types.ts';
import { onGroup } from './on-group.ts';
import { settings } from './settings.ts';
import { certaintyOf, type HoursTogether, hoursLeftOut, measuresOf, stepOf } from './together.ts';

/** One valve has no step. Of two, which may meet by chance, the diagnosis asks that both start too often. */
export const fewestValves = 2;
/** Of the settled time: a valve that feeds so much of it hardly ever shuts. */
const fullDuty = 0.85;
/** Of a state that is 0 or 1. */
const openAbove = 0.5;

/**
 * Valves that open and shut together where they used to go their own ways: their mean correlation within hours, so that
 * day and night, which all of them share, do not count. It is 0 for valves that know nothing of each other.
 */
export function circuitsInStep(group: GroupSignals, { circuits, log }: Signals): Evidence[] {
  const members = circuits.filter(
    (one) => group.members.includes(one.circuit.id) && one.circuit.valve?.quantity === 'status',
  );
  if (members.length < fewestValves) return [];
  const hours = hoursTogether(members, log);
  const step = stepOf(hours, settings.inStep.value, log.calendar);
  if (step === null) return [];
  return [
    {
      ...onGroup(group),
      probe: null,
      points: members.map((member) => member.circuit.valve!.point),
      onset: timeAt(log.grid, step.onset),
      end: null,
      certainty: certaintyOf(step),
      measures: measuresOf(step),
      features: {
        inStep: step.now,
        usualInStep: step.usual,
        valves: members.length,
        shareFull: shareFull(members, step.day),
      },
      shape: 'in-step',
    },
  ];
}

/** Share of the valves that hardly ever shut since `day`. */
function shareFull(members: readonly CircuitSignals[], day: number): number {
  const full = members.filter(({ duty }) => median(duty.subarray(day)) >= fullDuty);
  return full.length / members.length;
}

/**
 * Of each hour Σ (p both − p p′) over pairs of valves, and Σ √(p (1 − p) p′ (1 − p′)), the most that it can be. Sums over pairs
 * come from sums over valves: Σ x x′ = ((Σ x)² − Σ x²) / 2, and n open valves are n (n − 1) / 2 pairs.
 */
function hoursTogether(members: readonly CircuitSignals[], { grid }: Log): HoursTogether {
  const hour = samplesIn(grid, 60);
  const count = Math.floor(grid.count / hour);
  const openAt = new Uint16Array(count * hour);
  const sum = () => new Float64Array(count);
  const [shares, squares, spreads, spreadSquares] = [sum(), sum(), sum(), sum()];
  for (const member of members) {
    const valve = member.circuit.valve!.values;
    const leftOut = hoursLeftOut(member, count, hour);
    for (let k = 0; k < count; k++) {
      const p = leftOut[k] === 1 ? Number.NaN : shareOpen(valve, k * hour, (k + 1) * hour);
      if (Number.isNaN(p)) continue;
      shares[k]! += p;
      squares[k]! += p * p;
      spreads[k]! += Math.sqrt(p * (1 - p));
      spreadSquares[k]! += p * (1 - p);
      countOpen(openAt, valve, k * hour, (k + 1) * hour);
    }
  }
  const most = spreads.map((spread, k) => Math.max(0, spread * spread - spreadSquares[k]!) / 2);
  const common = shares.map(
    (share, k) => pairsOpen(openAt, k * hour, (k + 1) * hour) / hour - (share * share - squares[k]!) / 2,
  );
  return { hour, common, most };
}

/** Share of an hour for which a valve is open; NaN with a gap in it. */
function shareOpen(valve: Float64Array, from: number, to: number): number {
  let open = 0;
  for (let i = from; i < to; i++) {
    const state = valve[i]!;
    if (Number.isNaN(state)) return Number.NaN;
    open += Number(state > openAbove);
  }
  return open / (to - from);
}

/** Counts a valve at the samples at which it is open. */
function countOpen(openAt: Uint16Array, valve: Float64Array, from: number, to: number): void {
  for (let i = from; i < to; i++) openAt[i]! += Number(valve[i]! > openAbove);
}

function pairsOpen(openAt: Uint16Array, from: number, to: number): number {
  let pairs = 0;
  for (let i = from; i < to; i++) pairs += (openAt[i]! * (openAt[i]! - 1)) / 2;
  return pairs;
}
