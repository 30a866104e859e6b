import type { CircuitSeries } from '../json.ts';

const weekdays = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** The site's wall clock. The axis of a plot runs in it: local time written as if it were UTC. */
export interface SiteClock {
  toAxis(ms: number): number;
  fromAxis(axis: number): number;
}

export function siteClock(offsets: CircuitSeries['offsets']): SiteClock {
  const offsetMs = (ms: number): number => {
    let minutes = offsets[0]?.offsetMinutes ?? 0;
    for (const segment of offsets) if (segment.from <= ms) minutes = segment.offsetMinutes;
    return minutes * 60_000;
  };
  return {
    toAxis: (ms) => ms + offsetMs(ms),
    fromAxis: (axis) => axis - offsetMs(axis - offsetMs(axis)),
  };
}

/** `11 Sep` of axis time. */
export function axisDayText(axis: number): string {
  const clock = new Date(axis);
  return `${clock.getUTCDate()} ${months[clock.getUTCMonth()]}`;
}

/** `Fri 11 Sep, 04:00` of axis time. */
export function axisText(axis: number): string {
  const clock = new Date(axis);
  const two = (value: number): string => String(value).padStart(2, '0');
  const time = `${two(clock.getUTCHours())}:${two(clock.getUTCMinutes())}`;
  return `${weekdays[clock.getUTCDay()]} ${axisDayText(axis)}, ${time}`;
}

/** The wall clock that an RFC 3339 time with its offset shows, as axis time. */
export function axisOfTimestamp(timestamp: string): number {
  return Date.parse(`${timestamp.slice(0, 19)}Z`);
}

/** What plotly says of a range: a number, `2026-09-11`, or `2026-09-11 04:00:12.5`. */
export function axisOfRange(value: unknown): number {
  if (typeof value === 'number') return value;
  const [date, time = '00:00'] = String(value).split(' ');
  return Date.parse(`${date}T${time}Z`);
}
