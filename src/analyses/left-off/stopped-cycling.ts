import { clearRamp } from '../../maths/fit-ramp.ts';
import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import type { Kelvin } from '../../units/quantities.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf, heldAt } from './evidence.ts';
import { type CircuitHours, circuitHours, hourlyOpening } from './hours.ts';
import { settings } from './settings.ts';

/** A cycle smaller than this, or than so many steps of the log, is none that could be missed. */
const leastCycle: Kelvin = 0.8;
const leastSteps = 3;
/** Days that the change may take: the day on which it began holds hours of both kinds. */
const longestDays = 2;
/** A coil that never rests frosts: only the first days are cold for certain. */
const freshDays = 2;
const clarity = { leastSize: 0.4, leastScales: 4, leastScale: 0.05, leastExplained: 0.6 };

/**
 * Where no valve is logged: air that used to cycle between the switching points of its control, from some hour on hardly moves
 * between defrosts, and stands cold. A control that was told another set point goes on cycling, one that cannot hold it stands warm:
 * this one no longer acts, as where a valve is held open by hand.
 */
export function stoppedCycling(signals: CircuitSignals): Evidence[] {
  const { circuit, log, probes, usable } = signals;
  if (circuit.valve !== null) return [];
  const chosen = probes.filter((_, i) => usable[i]);
  const swing = Float64Array.from(log.calendar.days, (_, day) =>
    median(chosen.map((probe) => probe.swing[day]!)),
  );
  const ramp = clearRamp(
    swing.map((_, day) => day),
    swing,
    clarity,
  );
  if (ramp === null || ramp.end - ramp.start > longestDays) return [];
  const step = Math.max(0, ...circuit.probes.map(({ record }) => record.resolution));
  if (ramp.before < Math.max(leastCycle, leastSteps * step)) return [];
  if (ramp.after > settings.stillCycle.value * ramp.before) return [];
  const falls = chosen.map(
    ({ median: days }) =>
      median(days.subarray(0, ramp.start + 1)) - median(days.subarray(ramp.end, ramp.end + freshDays)),
  );
  if (!falls.every((fall) => fall > settings.usualWithin.value) || median(falls) < settings.forcedUnder.value)
    return [];
  const hours = circuitHours(signals, hourlyOpening(signals));
  const from = firstColdHour(signals, hours, ramp.start, ramp.end) * hours.samples;
  const length = (log.grid.count - from) / hours.samples;
  if (length < settings.coldHours.value) return [];
  return [
    evidenceOf(signals, {
      shape: 'override-on',
      from,
      to: null,
      certainty: 0.85,
      measures: [
        measure('hoursForced', length, 'h'),
        measure('underUsual', median(falls), 'K'),
        ...heldAt(signals, from, log.grid.count),
      ],
      features: { hours: length, still: 1, beganCold: 1, cycleLeft: ramp.after / ramp.before },
    }),
  ];
}

/** The hour between the two days from which the air stands nearer to what it came to than to what it was. */
function firstColdHour(
  { log }: CircuitSignals,
  { above, samples }: CircuitHours,
  start: number,
  end: number,
) {
  const { days } = log.calendar;
  const hourOf = (sample: number): number => Math.floor(sample / samples);
  const last = hourOf(days[Math.min(days.length - 1, end)]!.to);
  const before = median(above.subarray(0, hourOf(days[start]!.from)));
  const after = median(above.subarray(hourOf(days[end]!.from), last));
  let cost = 0;
  let least = 0;
  let at = hourOf(days[start]!.from);
  for (let k = at; k < last; k++) {
    const value = above[k]!;
    if (!Number.isNaN(value)) cost += Math.abs(value - before) - Math.abs(value - after);
    if (cost < least) {
      least = cost;
      at = k + 1;
    }
  }
  return at;
}
