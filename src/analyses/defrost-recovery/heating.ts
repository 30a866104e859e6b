import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { stepMinutes } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { type Change, levelChange } from './change.ts';
import { type DefrostEvent, isHeated, lengthsAreKnown } from './events.ts';
import { evidenceOf } from './evidence.ts';
import { heatFeatures } from './heat-features.ts';
import { settings } from './settings.ts';

const minuteResolution = 2;
/** Less than this, in minutes, a valve does not plainly show. */
const plainByValve = 5;
/** Defrosts by which the first longer one and the first warmer one may be apart. */
const heatedOnWithin = 2;
/** A valve may have rested for part of its cycle before a defrost: what it shows is this loose, as a share. */
const valveLooseness = 0.15;

/** Changes in how defrosts heat and when they end: hardly any rise, extended, ended early, always to the clock. */
export function heating(signals: CircuitSignals, events: readonly DefrostEvent[]): Evidence[] {
  const rise = levelChange(events.map((event) => event.rise));
  const rate = levelChange(events.map((event) => event.rate));
  const evidence: Evidence[] = [];
  const weak = [rise, rate].filter((change) => change !== null && isWeak(change)) as Change[];
  if (weak.length > 0 && peaksFell(events, weak[0]!))
    evidence.push(weakRise(signals, events, weak, rise, rate));
  const length = levelChange(events.map((event) => event.minutes));
  if (length === null) return evidence;
  const heatsOn = isHeatedOn(signals, events, length, rise);
  if (heatsOn || lengthsAreKnown(signals)) evidence.push(...changedLength(signals, events, length, heatsOn));
  return evidence;
}

/** Half of what it was, or two thirds where the events scatter little: by more than they scatter in both cases. */
function isWeak(change: Change): boolean {
  const ratio = change.after / change.before;
  const scales = (change.before - change.after) / change.scatter;
  if (!(change.before > 0)) return false;
  return (ratio < settings.weakRise.value && scales > 3) || (ratio < settings.weakerRise.value && scales > 6);
}

/** The peaks themselves are lower: a rise also shrinks when the air is warmer before, and that is not the heat. */
function peaksFell(events: readonly DefrostEvent[], change: Change): boolean {
  const before = median(events.slice(0, change.at).map((event) => event.peak));
  const after = median(events.slice(change.at).map((event) => event.peak));
  const rise = median(events.slice(0, change.at).map((event) => event.rise));
  return before - after > settings.weakRise.value * (1 - settings.weakRise.value) * rise;
}

function weakRise(
  signals: CircuitSignals,
  events: readonly DefrostEvent[],
  weak: readonly Change[],
  rise: Change | null,
  rate: Change | null,
): Evidence {
  const from = Math.min(...weak.map((change) => events[change.at]!.at));
  const riseRatio = rise === null ? Number.NaN : rise.after / rise.before;
  const rateRatio = rate === null ? Number.NaN : rate.after / rate.before;
  return evidenceOf(signals, {
    shape: 'weak-rise',
    probe: null,
    from,
    certainty: weak.length === 2 ? 0.95 : 0.75,
    measures: [
      measure('peakRise', rise?.after ?? Number.NaN, 'K'),
      measure('usualPeakRise', rise?.before ?? Number.NaN, 'K'),
      measure('riseRate', rate?.after ?? Number.NaN, 'K/min'),
      measure('usualRiseRate', rate?.before ?? Number.NaN, 'K/min'),
    ],
    features: {
      riseRatio,
      rateRatio,
      weakSigns: weak.length,
      isHeated: isHeated(signals.circuit.defrost) ? 1 : 0,
      ...lengthFeatures(events, from),
    },
  });
}

function lengthFeatures(events: readonly DefrostEvent[], from: number): { [name: string]: number } {
  const change = levelChange(events.map((event) => event.minutes));
  const near =
    change !== null && Math.abs(events[change.at]!.at - from) < 3 * (events[1]!.at - events[0]!.at);
  return change !== null && near ? { lengthRatio: change.after / change.before } : {};
}

/**
 * A heated coil whose defrosts are longer and whose air peaks higher from one and the same defrost on: the heat goes on where it
 * used to end. Two signs that agree need not be as plain as one: a logging step of length, and no status or valve.
 */
function isHeatedOn(
  signals: CircuitSignals,
  events: readonly DefrostEvent[],
  length: Change,
  rise: Change | null,
): boolean {
  const apart = rise === null ? Number.POSITIVE_INFINITY : Math.abs(rise.at - length.at);
  const enough = Math.min(length.at, events.length - length.at) >= settings.clockDefrosts.value;
  if (!isHeated(signals.circuit.defrost) || !enough || apart > heatedOnWithin) return false;
  const higher = rise!.after - rise!.before;
  const longer = length.after - length.before;
  const least = Math.max(minuteResolution, stepMinutes(signals.log.grid));
  return (
    higher >= Math.max(settings.heatedOnRise.value, settings.heatedOnScales.value * rise!.scatter) &&
    longer >= (lengthsAreKnown(signals) ? least : Math.max(least, plainByValve)) &&
    longer >= settings.heatedOnScales.value * length.scatter &&
    longer >= (settings.heatedOnRatio.value - 1) * length.before
  );
}

function changedLength(
  signals: CircuitSignals,
  events: readonly DefrostEvent[],
  change: Change,
  heatsOn: boolean,
): Evidence[] {
  const ratio = change.after / change.before;
  const moved = Math.abs(change.after - change.before);
  const isRead = signals.defrostSource === 'status';
  const resolution = Math.max(minuteResolution, stepMinutes(signals.log.grid));
  if (!heatsOn && moved < Math.max(3 * change.scatter, isRead ? 2 * resolution : plainByValve)) return [];
  const shape =
    heatsOn || ratio >= settings.extendedRatio.value
      ? 'extended'
      : ratio <= settings.earlyRatio.value
        ? 'ended-early'
        : null;
  if (shape === null) return [];
  const after = events.slice(change.at).map((event) => event.minutes);
  const longest = Math.max(...after);
  const loose = Math.max(minuteResolution, isRead ? 0 : valveLooseness * longest);
  const atLongest = after.filter((minutes) => longest - minutes <= loose).length / after.length;
  return [
    evidenceOf(signals, {
      shape,
      probe: null,
      from: events[change.at]!.at,
      certainty: (isRead ? 0.6 : 0.5) + Math.min(0.35, 0.05 * after.length),
      measures: [
        measure('defrostLength', change.after, 'min'),
        measure('usualDefrostLength', change.before, 'min'),
        measure('endedByTheClock', 100 * atLongest, '%'),
      ],
      features: {
        lengthRatio: ratio,
        endedByTheClock: atLongest >= settings.timeEndedShare.value ? 1 : 0,
        atLongestShare: atLongest,
        wasVariable: change.scatter > 0 ? 1 : 0,
        heatedOn: heatsOn ? 1 : 0,
        ...heatFeatures(events, change.at),
      },
    }),
  ];
}
