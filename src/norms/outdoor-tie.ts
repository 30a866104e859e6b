import { blocksADay } from '../figures/clock-blocks.ts';
import { huberRegression } from '../maths/huber-regression.ts';
import { mean } from '../maths/mean.ts';
import { median } from '../maths/median.ts';
import { medianAbsoluteDeviation } from '../maths/median-absolute-deviation.ts';
import type { Log } from '../model/log.ts';
import type { Record } from '../model/record.ts';
import type { OutdoorTie } from './norm.ts';
import { tie as settings } from './settings.ts';

const outdoorName = /out(side|door)|ambient|\boat\b/i;

/** The outdoor temperature of the site, where one is logged. */
export function outdoorRecord(log: Log): Record | null {
  const loose = [...log.unassigned, ...log.suctionGroups.flatMap(({ others }) => Object.values(others))];
  const named = log.suctionGroups.flatMap(({ others }) =>
    Object.entries(others).flatMap(([name, record]) => (outdoorName.test(name) ? [record] : [])),
  );
  const isOutdoor = ({ quantity, point }: Record) => quantity === 'temperature' && outdoorName.test(point);
  return named.find(({ quantity }) => quantity === 'temperature') ?? loose.find(isOutdoor) ?? null;
}

/** Daily means; NaN where less than half the day is known. */
export function dailyOutdoor(record: Record, log: Log): Float64Array {
  return Float64Array.from(log.calendar.days, ({ from, to }) => {
    const known = record.values.subarray(from, to).filter((value) => !Number.isNaN(value));
    return 2 * known.length >= to - from ? mean(known) : Number.NaN;
  });
}

/**
 * The Huber line of the daily medians of a figure over the outdoor temperature of the day, on learnt days alone; null
 * where it takes off too little of the scatter to be worth following.
 */
export function outdoorTie(
  values: Float64Array,
  outdoor: Float64Array | null,
  point: string,
  learnt: readonly boolean[],
): OutdoorTie | null {
  if (outdoor === null) return null;
  const x: number[] = [];
  const y: number[] = [];
  learnt.forEach((isLearnt, d) => {
    const level = median(values.subarray(d * blocksADay, (d + 1) * blocksADay));
    if (!isLearnt || Number.isNaN(level) || Number.isNaN(outdoor[d]!)) return;
    x.push(outdoor[d]!);
    y.push(level);
  });
  if (x.length < settings.fewestDays || Math.max(...x) - Math.min(...x) < settings.leastRange) return null;
  const { intercept, slope } = huberRegression(x, y);
  const left = medianAbsoluteDeviation(y.map((level, k) => level - intercept - slope * x[k]!));
  const whole = medianAbsoluteDeviation(y);
  if (!(left <= (1 - settings.leastGain) * whole)) return null;
  return { point, slope, usualOutdoor: median(x), outdoor };
}
