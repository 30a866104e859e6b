import { clearRamp } from '../../maths/fit-ramp.ts';
import type { DayChange } from './change-in-days.ts';

/** K; scatter of daily offsets below `leastScale` is held to be quantisation. */
const clarity = { leastSize: 0.4, leastScales: 4, leastScale: 0.06, leastExplained: 0.7 };
const leastDays = 3;
/** The rise must reach to the step, give or take so many days. */
const reachDays = 3;

/**
 * The day from which an offset crept, the way it then leapt, up to the day of the leap; null where it stood flat. A coil
 * takes ice for weeks and freezes shut within hours, since the less air it passes the faster it ices; a fan that
 * stops and a lead that slips give no notice.
 */
export function announcedFrom(offsets: Float64Array, change: DayChange, leapDay: number): number | null {
  const before = offsets.subarray(0, leapDay);
  const ramp = clearRamp(
    before.map((_, day) => day),
    before,
    clarity,
  );
  if (ramp === null || ramp.end - ramp.start < leastDays || ramp.end < leapDay - reachDays) return null;
  const isSameWay = (ramp.after - ramp.before) * (change.after - change.before) > 0;
  return isSameWay ? ramp.start : null;
}
