import { median } from '../maths/median.ts';
import { poissonInterval } from '../maths/poisson-interval.ts';
import { quantile } from '../maths/quantile.ts';
import { samplesIn } from '../model/grid.ts';
import type { CircuitSignals } from '../signals/types.ts';
import { celsiusFrom, exportTemperatureFrom } from '../units/convert.ts';
import type { Celsius, Minutes } from '../units/quantities.ts';
import { lockOutOf } from './alarm-input.ts';
import { slidingRoom, sustainedLevels } from './sustained-level.ts';

/** Delay and lock-out of the suggested alarm: short, because its limit fits this one probe. Common practice, no source. */
export const suggestedDelayMinutes: Minutes = 30;
export const suggestedLockOutMinutes: Minutes = 30;
/** A limit is taken that would have come on no more than this share of the quiet days. */
const nuisanceShare = 1 / 30;
/** Fewer quiet days than this teach no limit. */
export const fewestQuietDays = 7;
const roundTo = 0.5;

export interface SuggestedLimit {
  readonly point: string;
  readonly limit: Celsius;
  readonly delayMinutes: Minutes;
  readonly lockOutAfterMinutes: Minutes;
  readonly quietDays: number;
  /** Quiet days on which it would have come all the same. */
  readonly nuisanceDays: number;
  /** Expected nuisance days in a month of 30 quiet days, with its exact 95 % Poisson interval. */
  readonly aMonth: { readonly expected: number; readonly low: number; readonly high: number };
}

/**
 * An alarm for each usable probe from its own quiet days: the lowest limit, in half degrees of the site's unit, that
 * is not under the usual top of its settled air (median of the daily p90) and that the air outside defrosts held for
 * the delay on at most one quiet day in thirty. Null entries: too few quiet days.
 */
export function suggestLimits(signals: CircuitSignals, quiet: readonly boolean[]): (SuggestedLimit | null)[] {
  const { circuit, usable, log } = signals;
  const locked = lockOutOf(signals, suggestedLockOutMinutes);
  const delay = samplesIn(log.grid, suggestedDelayMinutes);
  const room = slidingRoom(log.grid.count);
  return circuit.probes.map(({ point, record }, k) => {
    if (!usable[k]) return null;
    const levels = sustainedLevels(record.values, locked, delay, log.calendar, room).filter(
      (level, day) => quiet[day] === true && !Number.isNaN(level),
    );
    if (levels.length < fewestQuietDays) return null;
    const usualTop = median(signals.probes[k]!.p90.filter((_, day) => quiet[day] === true));
    const held = quantile(levels, 1 - nuisanceShare);
    const limit = roundedUp(Number.isNaN(usualTop) ? held : Math.max(held, usualTop), log.units.temperature);
    const nuisanceDays = levels.filter((level) => level > limit).length;
    const { low, high } = poissonInterval(nuisanceDays);
    const monthly = 30 / levels.length;
    return {
      point,
      limit,
      delayMinutes: suggestedDelayMinutes,
      lockOutAfterMinutes: suggestedLockOutMinutes,
      quietDays: levels.length,
      nuisanceDays,
      aMonth: { expected: nuisanceDays * monthly, low: low * monthly, high: high * monthly },
    };
  });
}

function roundedUp(limit: Celsius, unit: 'degF' | 'degC' | 'K'): Celsius {
  const shown = exportTemperatureFrom(limit, unit);
  return celsiusFrom(Math.ceil(shown / roundTo - 1e-6) * roundTo, unit);
}
