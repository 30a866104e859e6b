import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { minuteOfDay } from '../../model/grid.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../../signals/types.ts';
import type { Minutes } from '../../units/quantities.ts';
import { meta } from './meta.ts';
import { endMinusStart } from './probe-rises.ts';
import { findRise } from './rise.ts';
import { settings } from './settings.ts';

const fewestOthers = 2;
/** From so late to so early, minutes of the day, a defrost and what follows it is over before the store opens. */
const nightFrom = 22 * 60;
const nightUntil = 5 * 60;
const fewestDefrosts = 3;
/** Days of late by which a circuit is judged, as elsewhere. */
const daysNow = 5;

/**
 * Air that came to stand warm in trading hours and by night stands where it always did. A daily median falls between
 * the two and hides it: the hours from 10 to 20 are held against those from 1 to 5, and against what the same
 * difference did on the other circuits. `nightRecoveryRatio` and `nightRecoveryRise` say how much longer it takes to come back from the
 * defrosts of the night: doors and loading, which rest then, leave that as it was; a coil that has lost capacity does not.
 */
export function tradingHoursRise(
  signals: CircuitSignals,
  group: GroupSignals | null,
  site: Signals,
): Evidence | null {
  const apart = lessOthers(dayOverNight(signals).days, othersOf(signals, group, site));
  const rise = findRise(apart);
  if (rise === null || rise.size < settings.tradingRise.value) return null;
  const start = rise.ramp.start;
  const byNight = endMinusStart(levelOf(signals, 'night'), start);
  const byDay = endMinusStart(levelOf(signals, 'day'), start);
  if (!(byDay >= settings.tradingRise.value && byNight < settings.nightShare.value * byDay)) return null;
  const { circuit, log } = signals;
  const day = log.calendar.days[Math.min(start + 1, apart.length - 1)]!;
  const dutyRise = endMinusStart(signals.duty, start);
  return {
    analysis: meta.id,
    kind: 'upward-drift',
    circuit: circuit.id,
    suctionGroup: circuit.suctionGroup,
    probe: null,
    points: circuit.probes.map((one) => one.point),
    onset: log.grid.startMs + ((day.from + day.to) / 2) * log.grid.stepMs,
    end: null,
    certainty: Math.min(0.95, Math.max(1 - rise.correctedProbability, rise.ramp.explained)),
    measures: [
      { name: 'riseInTradingHours', value: byDay, low: null, high: null, unit: 'K' },
      { name: 'riseByNight', value: byNight, low: null, high: null, unit: 'K' },
    ],
    features: {
      rise: byDay,
      dayNightRatio: (byDay - byNight) / byDay,
      ...(Number.isFinite(dutyRise) ? { dutyRise } : {}),
      ...nightRecovery(signals, start),
    },
    shape: 'trading-hours',
    projection: null,
  };
}

function nightRecovery(signals: CircuitSignals, start: number): { [feature: string]: number } {
  const { grid, calendar } = signals.log;
  const byNight = signals.defrosts.filter(({ complete, from }) => {
    const minute = minuteOfDay(grid, calendar, from);
    return complete && (minute >= nightFrom || minute < nightUntil);
  });
  const minutesFrom = (from: number, to: number): Minutes => {
    const those = byNight.filter((window) => window.from >= from && window.to <= to);
    if (those.length < fewestDefrosts) return Number.NaN;
    return median(
      those.map(({ probes }) =>
        median(
          probes
            .filter((_, i) => signals.usable[i])
            .map(({ recoveryMinutes, watchedMinutes }) => recoveryMinutes ?? watchedMinutes),
        ),
      ),
    );
  };
  const { days } = calendar;
  const before = minutesFrom(0, days[start]!.from);
  const now = minutesFrom(days[Math.max(0, days.length - daysNow)]!.from, grid.count);
  return before > 0 && Number.isFinite(now)
    ? { nightRecoveryRatio: now / before, nightRecoveryRise: now - before }
    : {};
}

function levelOf({ probes, usable }: CircuitSignals, part: 'day' | 'night'): Float64Array {
  const chosen = probes.filter((_, i) => usable[i]);
  const days = probes[0]?.[part].length ?? 0;
  return Float64Array.from({ length: days }, (_, day) => median(chosen.map((probe) => probe[part][day]!)));
}

interface DayOverNight {
  readonly days: Float64Array;
  /** The same less its median over the log. */
  readonly moved: Float64Array;
}

/** Every circuit is held against all others: each is worked out once. */
const worked = new WeakMap<CircuitSignals, DayOverNight>();

function dayOverNight(signals: CircuitSignals): DayOverNight {
  const known = worked.get(signals);
  if (known !== undefined) return known;
  const night = levelOf(signals, 'night');
  const days = levelOf(signals, 'day').map((value, day) => value - night[day]!);
  const usual = median(days);
  const made = { days, moved: days.map((value) => value - usual) };
  worked.set(signals, made);
  return made;
}

/** The others of its suction group where two can be asked, else all others of the site. */
function othersOf(signals: CircuitSignals, group: GroupSignals | null, site: Signals): CircuitSignals[] {
  const others = site.circuits.filter((one) => one !== signals);
  const ofGroup = others.filter((one) => group?.members.includes(one.circuit.id));
  return ofGroup.length >= fewestOthers ? ofGroup : others;
}

function lessOthers(days: Float64Array, others: readonly CircuitSignals[]): Float64Array {
  if (others.length < fewestOthers) return days;
  const moved = others.map((other) => dayOverNight(other).moved);
  return days.map((value, day) => {
    const common = median(moved.map((other) => other[day]!));
    return value - (Number.isFinite(common) ? common : 0);
  });
}
