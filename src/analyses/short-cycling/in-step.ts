import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { samplesIn, timeAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../../signals/types.ts';
import { knownFeatures, measure } from '../evidence-parts.ts';
import { meta } from './meta.ts';
import { settings } from './settings.ts';

/** One valve has no step. Of two, which may meet by chance, the diagnosis asks that both start too often. */
const fewestValves = 2;
const fewestNormDays = 3;
/** Valves of a circuit that defrosts, or has just done so, open when that ends: so long after it they are left out. */
const afterDefrostMinutes = 90;
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
  const days = Float64Array.from(log.calendar.days, (day) => correlationIn(hours, day.from, day.to));
  const norm = days.subarray(0, Math.max(fewestNormDays, Math.ceil(days.length / 3)));
  const usual = median(norm);
  const limit = Math.max(0, usual) + settings.inStep.value;
  let first = days.length;
  while (first > 0 && !(days[first - 1]! < limit)) first--;
  const since = days.subarray(first).filter((value) => !Number.isNaN(value));
  if (first < fewestNormDays || since.length < settings.busyDays.value) return [];
  const now = median(since);
  const { from } = log.calendar.days[first - 1]!;
  const { to } = log.calendar.days[first]!;
  const onset = partingHour((now + Math.max(0, usual)) / 2, hours, from, to);
  return [
    {
      analysis: meta.id,
      kind: 'short-cycling',
      circuit: null,
      suctionGroup: group.group.id,
      probe: null,
      points: members.map((member) => member.circuit.valve!.point),
      onset: timeAt(log.grid, onset),
      end: null,
      certainty: 0.6 + Math.min(0.3, 0.06 * since.length),
      measures: [measure('inStep', now, '1'), measure('usualInStep', usual, '1')],
      features: knownFeatures({ inStep: now, usualInStep: usual, valves: members.length }),
      shape: 'in-step',
    },
  ];
}

/** Of each hour Σ (p both − p p′) over pairs of valves, and the most that it can be, Σ √(p (1 − p) p′ (1 − p′)). */
interface HoursTogether {
  readonly hour: number;
  readonly common: Float64Array;
  readonly most: Float64Array;
}

/** Sums over pairs come from sums over valves: Σ x x′ = ((Σ x)² − Σ x²) / 2, and n open valves are n (n − 1) / 2 pairs. */
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

/** Mean correlation over the whole hours within samples `from` to `to`; NaN where nothing is known of it. */
function correlationIn({ hour, common, most }: HoursTogether, from: number, to: number): number {
  let together = 0;
  let largest = 0;
  for (let k = Math.ceil(from / hour); (k + 1) * hour <= to && k < common.length; k++) {
    together += common[k]!;
    largest += most[k]!;
  }
  return largest > 0 ? together / largest : Number.NaN;
}

/** The hour, in samples, that best parts those from `from` to `to` into one side below `level` and one above it. */
function partingHour(level: number, hours: HoursTogether, from: number, to: number): number {
  const { hour } = hours;
  let sum = 0;
  let most = 0;
  let at = from;
  for (let k = Math.ceil(from / hour); (k + 1) * hour <= to; k++) {
    const now = correlationIn(hours, k * hour, (k + 1) * hour);
    if (Number.isNaN(now)) continue;
    sum += level - now;
    if (sum > most) {
      most = sum;
      at = (k + 1) * hour;
    }
  }
  return at;
}

/** 1 in hours with a stop, or a defrost shortly before. */
function hoursLeftOut({ defrosts, offSpells, log }: CircuitSignals, count: number, hour: number): Uint8Array {
  const leftOut = new Uint8Array(count);
  const after = samplesIn(log.grid, afterDefrostMinutes);
  const leaveOut = (from: number, to: number) =>
    leftOut.fill(1, Math.max(0, Math.floor(from / hour)), Math.ceil(to / hour));
  for (const { from, to } of defrosts) leaveOut(from, to + after);
  for (const { from, to } of offSpells) leaveOut(from, to + after);
  return leftOut;
}
