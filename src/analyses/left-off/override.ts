import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { timeAt } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf, heldAt } from './evidence.ts';
import { type CircuitHours, isRegulating, usualDifferential } from './hours.ts';
import { settings } from './settings.ts';

/** Hours of a stretch in which the valve may seem to pause: a defrost longer than it, a missing reading. */
const pauseHours = 1;
/** … and one more where both only seem to pause for a part of it, as at the end of a defrost. */
const mostlyOpen = 0.8;
/** In the first hours of a stretch a coil is not yet frosted, h. */
export const freshHours = 12;

/**
 * A valve that feeds on and on although the air is under the level at which the control would have shut it, or, day
 * after day, well under where the control used to hold it: somebody put it in hand. Where a valve that used to pause begins so,
 * its first half day shows it: later its coil frosts and the air climbs. Every probe must be at or under its usual level,
 * for one that reads high drives the valve as well.
 */
export function overrides(signals: CircuitSignals, hours: CircuitHours): Evidence[] {
  const { circuit, log } = signals;
  if (circuit.valve === null) return [];
  return openStretches(hours.opening).flatMap(({ from, to }) => {
    const under: number[] = [];
    for (let k = from; k < to; k++) if (hours.under[k]! > 0) under.push(hours.under[k]!);
    const isUnder = under.length >= settings.forcedShare.value * (to - from);
    const fell = fallOf(hours, from, to);
    const isForced =
      (isUnder || isColdForDays(signals, hours, from, to, fell)) && allProbesUsual(hours, from, to);
    const fresh = Math.min(to, from + freshHours);
    const beganCold = beganForced(hours, from, fresh) && allProbesUsual(hours, from, fresh);
    if (!isForced && !beganCold) return [];
    const climbed = beganCold ? riseOfAll(hours, Math.max(fresh, to - 24), to, from) : Number.NaN;
    const isStill = to >= hours.opening.length - pauseHours - 1;
    const length = to - from;
    if (!isStill && length < settings.endedHours.value) return [];
    const end = Math.min(log.grid.count, to * hours.samples);
    return [
      evidenceOf(signals, {
        shape: isStill ? 'override-on' : 'override-was-on',
        from: from * hours.samples,
        to: isStill ? null : end,
        certainty: 0.6 + Math.min(0.3, length / 100) + 0.1 * (under.length / length),
        measures: [
          measure('hoursForced', length, 'h'),
          measure('underCutOut', median(under), 'K'),
          measure('underUsual', fell, 'K'),
          ...heldAt(signals, from * hours.samples, end),
        ],
        features: {
          hours: length,
          still: isStill ? 1 : 0,
          underCutOut: median(under),
          underShare: under.length / length,
          beganCold: beganCold ? 1 : 0,
          ...(climbed > settings.usualWithin.value ? { climbed } : {}),
          defrostsSeen: defrostsIn(signals, timeAt(log.grid, from * hours.samples), timeAt(log.grid, end)),
        },
      }),
    ];
  });
}

/** How far the controlled air stood under where the control used to hold it, K; NaN without a past. */
function fallOf({ opening, above }: CircuitHours, from: number, to: number): number {
  const regulated = above.subarray(0, from).filter((_, k) => isRegulating(opening[k]!));
  if (regulated.length < settings.endedHours.value) return Number.NaN;
  return median(regulated) - median(above.subarray(from, to));
}

/**
 * A control would have shut the valve within half a dead band, and a coil short of capacity stands open because the air
 * is warm. Only against a logged set point, for a lower one that nobody logged looks the same.
 */
function isColdForDays(
  { circuit }: CircuitSignals,
  { probes }: CircuitHours,
  from: number,
  to: number,
  fell: number,
): boolean {
  if (circuit.setPoint === null || typeof circuit.setPoint === 'number') return false;
  const band = (circuit.differential ?? usualDifferential) / 2;
  if (to - from < settings.coldHours.value || !(fell > band + settings.forcedUnder.value)) return false;
  return probes.every(
    (probe) =>
      median(probe.subarray(from, to)) < median(probe.subarray(0, from)) - settings.usualWithin.value,
  );
}

/** A valve that used to pause feeds on from one hour to the next, and the air goes where it would have been shut. */
function beganForced(hours: CircuitHours, from: number, fresh: number): boolean {
  if (fresh - from < freshHours || !pausedBefore(hours, from)) return false;
  const under = hours.under.subarray(from, fresh).filter((value) => value > 0);
  return under.length >= settings.forcedShare.value * (fresh - from);
}

/** In half of the hours before and more its control shut it now and then. */
export function pausedBefore({ opening }: CircuitHours, from: number): boolean {
  const known = opening.subarray(0, from).filter((share) => !Number.isNaN(share));
  const paused = known.filter((share) => share < settings.forcedOpening.value);
  return known.length >= settings.endedHours.value && 2 * paused.length >= known.length;
}

function riseOfAll({ probes }: CircuitHours, from: number, to: number, before: number): number {
  return median(probes.map((probe) => median(probe.subarray(from, to)) - median(probe.subarray(0, before))));
}

/** Runs of hours in which the valve was open all the time that it could be. */
export function openStretches(opening: Float64Array): { from: number; to: number }[] {
  const stretches: { from: number; to: number }[] = [];
  let from = -1;
  let last = -1;
  for (let k = 0; k <= opening.length; k++) {
    const isOpen = k < opening.length && opening[k]! >= settings.forcedOpening.value;
    const isKnown = k < opening.length && !Number.isNaN(opening[k]!);
    if (isOpen) {
      if (from < 0) from = k;
      last = k;
    } else if (from >= 0 && (k === opening.length || (isKnown && k - last > pauseHoursAt(opening, k)))) {
      if (last + 1 - from >= settings.forcedHours.value) stretches.push({ from, to: last + 1 });
      from = -1;
    }
  }
  return stretches;
}

function pauseHoursAt(opening: Float64Array, k: number): number {
  const isShort = opening[k]! >= mostlyOpen && opening[k - 1]! >= mostlyOpen;
  return isShort ? pauseHours + 1 : pauseHours;
}

function allProbesUsual({ probes }: CircuitHours, from: number, to: number): boolean {
  return probes.every((hours) => {
    const before = median(hours.subarray(0, from));
    return !(median(hours.subarray(from, to)) > before + settings.usualWithin.value);
  });
}

function defrostsIn({ defrosts, log }: CircuitSignals, from: number, to: number): number {
  return defrosts.filter((window) => {
    const start = timeAt(log.grid, window.from);
    return start >= from && start < to;
  }).length;
}
