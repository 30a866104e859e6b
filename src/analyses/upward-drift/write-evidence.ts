import { median } from '../../maths/median.ts';
import { actionLimit } from '../../model/air-limit.ts';
import type { Evidence, Measure } from '../../model/evidence.ts';
import type { Projection } from '../../model/finding.ts';
import type { Log } from '../../model/log.ts';
import type { CircuitSignals, GroupSignals } from '../../signals/types.ts';
import { meta } from './meta.ts';
import { projectToLimit } from './projection.ts';
import type { Rise } from './rise.ts';
import { settings } from './settings.ts';

const dayMs = 86_400_000;
/** A circuit that no other can be held against may only feel the weather. */
const aloneFactor = 0.4;

/**
 * One rise as evidence.
 *
 * @param onsetDay the day on which it began: that of the rise, or of an earlier witness
 * @param absolute daily level of the air itself with the common mode taken out, Celsius: what meets the limit
 */
export function riseEvidence(
  signals: CircuitSignals,
  group: GroupSignals | null,
  probe: number | null,
  rise: Rise,
  absolute: Float64Array,
  onsetDay: number,
  features: Readonly<{ [name: string]: number }>,
): Evidence {
  const { circuit, log } = signals;
  const day = log.calendar.days[onsetDay]!;
  const onset = log.grid.startMs + ((day.from + day.to) / 2) * log.grid.stepMs;
  const held = (features.ownRise ?? rise.size) < settings.heldShare.value * rise.size;
  const projection = projected(signals, group, rise, absolute, held);
  const measures = [
    { name: 'rise', value: rise.size, low: null, high: null, unit: 'K' },
    ...paceOf(rise, absolute.length - 1),
  ].filter((measure) => Number.isFinite(measure.value));
  const finite = Object.entries(features).filter(([, value]) => Number.isFinite(value));
  return {
    analysis: meta.id,
    kind: 'upward-drift',
    circuit: circuit.id,
    suctionGroup: circuit.suctionGroup,
    probe: probe === null ? null : circuit.probes[probe]!.point,
    points: circuit.probes.map((one) => one.point),
    onset,
    end: null,
    certainty: certaintyOf(rise, absolute) * (features.compared === 0 ? aloneFactor : 1),
    measures,
    features: {
      rise: rise.size,
      rampDays: rise.ramp.end - rise.ramp.start,
      daysSince: absolute.length - rise.ramp.start,
      levelled: rise.levelled ? 1 : 0,
      ...Object.fromEntries(finite),
    },
    shape: rise.shape,
    projection,
  };
}

/** How fast it goes; of a rise that is over, how long it took and how long ago: a slope would speak of what no longer happens. */
function paceOf(rise: Rise, lastDay: number): Measure[] {
  const exactly = { low: null, high: null };
  if (rise.levelled) {
    return [
      { name: 'daysOfRise', value: rise.ramp.end - rise.ramp.start, ...exactly, unit: 'd' },
      { name: 'daysSinceRise', value: lastDay - rise.ramp.end, ...exactly, unit: 'd' },
    ];
  }
  if (rise.shape === 'step') return [];
  return [{ name: 'slope', value: rise.slope, low: rise.slopeLow, high: rise.slopeHigh, unit: 'K/d' }];
}

function projected(
  signals: CircuitSignals,
  group: GroupSignals | null,
  rise: Rise,
  absolute: Float64Array,
  held: boolean,
): Projection | null {
  const limit = actionLimit(signals.circuit, group?.group ?? null, median(signals.setPoint));
  if (limit === null) return null;
  const found = projectToLimit(wholeDays(absolute, signals.log), limit.value, {
    onsetDay: rise.ramp.start,
    levelled: rise.levelled,
    held,
  });
  const { days } = signals.log.calendar;
  const { grid } = signals.log;
  const lastDay = days.at(-1)!;
  const now = grid.startMs + ((lastDay.from + lastDay.to) / 2) * grid.stepMs;
  const at = (ahead: number | null): number | null => (ahead === null ? null : now + ahead * dayMs);
  const date = at(found.days);
  // What is not reached by the last reading is reached at the next, at the soonest.
  const next = grid.startMs + (grid.count + 1) * grid.stepMs;
  return {
    limit: limit.value,
    at: date === null || found.days! <= 0 ? date : Math.max(date, next),
    earliest: at(found.earliest),
    latest: at(found.latest),
    reason: found.reason,
    limitSource: limit.source,
    levelNow: found.levelNow,
  };
}

/** Without a last day of which less than half is logged: by night air is not what it is over a day. */
function wholeDays(days: Float64Array, { calendar, grid }: Log): Float64Array {
  const { from, to } = calendar.days.at(-1)!;
  if ((to - from) * grid.stepMs >= dayMs / 2) return days;
  const whole = days.slice();
  whole[whole.length - 1] = Number.NaN;
  return whole;
}

/** The least of: 1 − corrected probability (or what a young rise explains), coverage, and the share of days up. */
function certaintyOf(rise: Rise, absolute: Float64Array): number {
  const significance = Math.max(1 - rise.correctedProbability, rise.ramp.explained);
  const known = absolute.filter(Number.isFinite).length / absolute.length;
  const since = absolute.subarray(rise.ramp.start + 1).filter(Number.isFinite);
  const floor = median(absolute.subarray(0, rise.ramp.start + 1)) + rise.size / 8;
  const up = since.length === 0 ? 0.5 : since.filter((value) => value > floor).length / since.length;
  return Math.max(0.3, Math.min(significance, known, 0.5 + up / 2, 0.99));
}
