import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { type Calendar, samplesIn, stepMinutes, timeAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../../signals/types.ts';
import { knownFeatures, measure } from '../evidence-parts.ts';
import { coarsest, faster } from './faster-air.ts';
import { fewestValves } from './in-step.ts';
import { onGroup } from './on-group.ts';
import { settings } from './settings.ts';
import { certaintyOf, type HoursTogether, hoursLeftOut, measuresOf, stepOf } from './together.ts';

/**
 * Half a period of the strokes that are looked for, min: the difference to the readings so long before and after keeps strokes of
 * six to ten minutes and takes away what is slower, doors, load and the weather, which the circuits of a store share.
 */
const reachMinutes = 4;
/** Share of the root mean square of the hour that the common air must pass, up and down, to count as a cycle. */
const band = 0.5;

/**
 * Where valves are not logged: air falls while a valve is open and rises while it is shut, so circuits whose valves open in step
 * go up and down together within minutes. Correlation of the second differences of their air within hours, over pairs; a modulating
 * valve makes no strokes and is left out.
 */
export function airInStep(group: GroupSignals, { circuits, log }: Signals): Evidence[] {
  const members = circuits.filter(
    ({ circuit }) => group.members.includes(circuit.id) && circuit.valve?.quantity !== 'fraction',
  );
  if (members.length < fewestValves || stepMinutes(log.grid) > coarsest) return [];
  const { hours, cycles } = airTogether(members, log);
  const step = stepOf(hours, settings.airInStep.value, log.calendar);
  if (step === null) return [];
  const rates = dailyMedians(cycles, hours.hour, log.calendar);
  const usual = median(rates.subarray(0, step.day));
  const rate = median(rates.subarray(step.day));
  const isTooOften = rate >= settings.ownNormStarts.value && rate >= faster * usual;
  return [
    {
      ...onGroup(group),
      probe: null,
      points: members.map(({ circuit }) => circuit.probes[0]!.point),
      onset: timeAt(log.grid, step.onset),
      end: null,
      certainty: certaintyOf(step),
      measures: [
        ...measuresOf(step),
        measure('airCyclesPerHour', rate, '/h'),
        measure('usualAirCyclesPerHour', usual, '/h'),
      ],
      features: knownFeatures({
        inStep: step.now,
        usualInStep: step.usual,
        valves: members.length,
        byAir: 1,
        tooOften: isTooOften ? 1 : 0,
      }),
      shape: 'in-step',
    },
  ];
}

/**
 * How much the air of circuits goes together, and how often it goes up and down as one, in each hour. Hours count by their pairs,
 * not by their swing: fast strokes of a few hours are no whole day.
 */
function airTogether(
  members: readonly CircuitSignals[],
  { grid }: Log,
): { readonly hours: HoursTogether; readonly cycles: Float64Array } {
  const hour = samplesIn(grid, 60);
  const count = Math.floor(grid.count / hour);
  const sum = () => new Float64Array(count);
  const [spreads, squares, known, common] = [sum(), sum(), sum(), sum()];
  const cycles = sum().fill(Number.NaN);
  const all = new Float64Array(count * hour);
  for (const member of members) {
    const strokes = strokesOf(member, Math.max(1, samplesIn(grid, reachMinutes)), all.length);
    const leftOut = hoursLeftOut(member, count, hour);
    for (let k = 0; k < count; k++) {
      const energy = leftOut[k] === 1 ? Number.NaN : energyOf(strokes, k * hour, (k + 1) * hour);
      if (!(energy > 0)) continue;
      known[k]!++;
      spreads[k]! += Math.sqrt(energy);
      squares[k]! += energy;
      for (let i = k * hour; i < (k + 1) * hour; i++) all[i]! += strokes[i]!;
    }
  }
  const pairs = known.map((n) => (n * (n - 1)) / 2);
  for (let k = 0; k < count; k++) {
    if (pairs[k] === 0) continue;
    const energy = energyOf(all, k * hour, (k + 1) * hour);
    const most = spreads[k]! * spreads[k]! - squares[k]!;
    common[k] = (pairs[k]! * (energy - squares[k]!)) / most;
    cycles[k] = cyclesIn(all.subarray(k * hour, (k + 1) * hour), band * Math.sqrt(energy / hour));
  }
  return { hours: { hour, common, most: pairs }, cycles };
}

/** Second differences of the air over `reach` samples, K. */
function strokesOf({ air }: CircuitSignals, reach: number, count: number): Float64Array {
  const strokes = new Float64Array(count).fill(Number.NaN);
  for (let i = reach; i < Math.min(count, air.length - reach); i++)
    strokes[i] = air[i]! - (air[i - reach]! + air[i + reach]!) / 2;
  return strokes;
}

/** Sum of the squares of an hour; NaN where it has a gap. */
function energyOf(strokes: Float64Array, from: number, to: number): number {
  let energy = 0;
  for (let i = from; i < to; i++) energy += strokes[i]! * strokes[i]!;
  return energy;
}

function cyclesIn(values: Float64Array, limit: number): number {
  if (!(limit > 0)) return Number.NaN;
  let isLow = false;
  let cycles = 0;
  for (const value of values) {
    if (value < -limit) isLow = true;
    if (value <= limit || !isLow) continue;
    isLow = false;
    cycles++;
  }
  return cycles;
}

function dailyMedians(hours: Float64Array, hour: number, { days }: Calendar): Float64Array {
  return Float64Array.from(days, ({ from, to }) =>
    median(hours.subarray(Math.ceil(from / hour), Math.floor(to / hour))),
  );
}
