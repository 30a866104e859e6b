import { median } from '../../maths/median.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import type { Kelvin } from '../../units/quantities.ts';
import { type Comparison, type Span, wholeDays } from './comparison.ts';
import { errorOfMedian } from './error-of-median.ts';

const leastDays = 3;

/**
 * How much warmer the places beside a probe became than those farther off, as a share of its own change. Heat spreads along a
 * line-up, so what is beside a warm place is warmed; a false reading reaches its neighbours through the control alone, which
 * cools them all alike. Daily medians of settled air; with three places and more, of which one is not beside it.
 */
export function spill(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
  compared: Comparison,
  shift: Kelvin,
): { [feature: string]: number } {
  const { probes } = signals.circuit;
  const away = (peer: number): number => Math.abs(probes[peer]!.position - probes[probe]!.position);
  const beside = peers.filter((peer) => away(peer) === 1);
  const farther = peers.filter((peer) => away(peer) > 1);
  if (beside.length === 0 || farther.length === 0) return {};
  const level = (places: readonly number[], day: number): number =>
    median(places.map((place) => signals.probes[place]!.median[day]!));
  const apart = (span: Span): Float64Array => {
    const { from, to } = wholeDays(signals.log.calendar, span);
    return Float64Array.from(
      { length: to - from },
      (_, i) => level(beside, from + i) - level(farther, from + i),
    ).filter(Number.isFinite);
  };
  const now = apart(compared.now);
  const old = apart(compared.old);
  if (Math.min(now.length, old.length) < leastDays) return {};
  return {
    spill: (median(now) - median(old)) / shift,
    spillError: Math.hypot(errorOfMedian(now), errorOfMedian(old)) / Math.abs(shift),
  };
}
