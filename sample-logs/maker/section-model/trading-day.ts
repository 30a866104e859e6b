import type { Random } from '../random.ts';
import type { CircuitParameters } from './parameters.ts';

const weekdayTrade = [1.04, 0.98, 0.97, 0.98, 1, 1.05, 1.07];

/** Load of one circuit through the trading day: night curtain, weekday pattern, stocking. */
export function createTradingDay(parameters: CircuitParameters, random: Random) {
  let stockingUntil = -1;
  let stockingLoad = 0;
  let today: number[] = [];
  return {
    load(minute: number, minuteOfDay: number, weekday: number): number {
      if (minuteOfDay === 0 || today.length === 0) {
        today = parameters.stocking.map((usual) => usual + Math.round(25 * random.normal()));
      }
      if (today.includes(minuteOfDay) && random.chance(0.85)) {
        stockingUntil = minute + random.whole(20, 75);
        stockingLoad = parameters.stockingRise * random.between(0.5, 1.3);
      }
      const { openMinute, closeMinute, nightLoad } = parameters;
      const openness = Math.min(
        1,
        Math.max(0, Math.min(minuteOfDay - openMinute, closeMinute - minuteOfDay) / 40),
      );
      const trade = openness > 0 ? (weekdayTrade[weekday]! - 1) * openness + 1 : 1;
      return (nightLoad + (1 - nightLoad) * openness) * trade + (minute < stockingUntil ? stockingLoad : 0);
    },
  };
}
