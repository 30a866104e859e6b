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
    const share = sharesOpen(member, count, hour);
    for (let k = 0; k < count; k++) {
      const p = share[k]!;
      if (Number.isNaN(p)) continue;
      shares[k]! += p;
      squares[k]! += p * p;
      spreads[k]! += Math.sqrt(p * (1 - p));
      spreadSquares[k]! += p * (1 - p);
    }
    for (const { on, from, to } of member.valveSpells) if (on) countOpen(openAt, share, from, to, hour);
  }
  const most = spreads.map((spread, k) => Math.max(0, spread * spread - spreadSquares[k]!) / 2);
  const common = shares.map(
    (share, k) => pairsOpen(openAt, k * hour, (k + 1) * hour) / hour - (share * share - squares[k]!) / 2,
  );
  return { hour, common, most };
}

/** Counts a valve that is open from one sample to another, in the hours that it is known in. */
function countOpen(openAt: Uint16Array, share: Float64Array, from: number, to: number, hour: number): void {
  const end = Math.min(to, openAt.length);
  for (let i = from; i < end; i++) if (!Number.isNaN(share[Math.floor(i / hour)]!)) openAt[i]!++;
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

/** Share of each hour for which a valve is open; NaN in hours with a gap, a stop or a defrost shortly before. */
function sharesOpen(member: CircuitSignals, count: number, hour: number): Float64Array {
  const open = new Float64Array(count);
  const known = new Float64Array(count);
  for (const spell of member.valveSpells) {
    addTo(known, spell.from, spell.to, hour);
    if (spell.on) addTo(open, spell.from, spell.to, hour);
  }
  const shares = open.map((samples, k) => (known[k]! >= hour ? samples / hour : Number.NaN));
  const after = samplesIn(member.log.grid, afterDefrostMinutes);
  const leaveOut = (from: number, to: number) =>
    shares.fill(Number.NaN, Math.max(0, Math.floor(from / hour)), Math.ceil(to / hour));
  for (const { from, to } of member.defrosts) leaveOut(from, to + after);
  for (const { from, to } of member.offSpells) leaveOut(from, to + after);
  return shares;
}

function addTo(hours: Float64Array, from: number, to: number, hour: number): void {
  for (let k = Math.floor(from / hour); k < hours.length && k * hour < to; k++)
    hours[k]! += Math.min(to, (k + 1) * hour) - Math.max(from, k * hour);
}
