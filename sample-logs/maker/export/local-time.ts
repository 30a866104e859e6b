import { zoneOffsets } from '../calendar.ts';

export type TimeStyle = 'iso' | 'iso-offset' | 'us' | 'us-ampm' | 'day-first' | 'dotted';

const two = (value: number): string => (value < 10 ? `0${value}` : `${value}`);

/** A writer of times in one style, for ascending instants within [startMs, endMs). */
export function timeWriter(
  style: TimeStyle,
  timeZone: string,
  startMs: number,
  endMs: number,
): (epochMs: number) => string {
  const offsets = zoneOffsets(timeZone, startMs, endMs);
  return (epochMs) => {
    let offset = offsets[0]!.offsetMinutes;
    for (const segment of offsets) if (segment.fromMs <= epochMs) offset = segment.offsetMinutes;
    return written(style, new Date(epochMs + offset * 60_000), offset);
  };
}

function written(style: TimeStyle, local: Date, offsetMinutes: number): string {
  const year = local.getUTCFullYear();
  const month = local.getUTCMonth() + 1;
  const day = local.getUTCDate();
  const hour = local.getUTCHours();
  const clock = `${two(hour)}:${two(local.getUTCMinutes())}`;
  switch (style) {
    case 'iso':
      return `${year}-${two(month)}-${two(day)} ${clock}:00`;
    case 'iso-offset': {
      const ahead = Math.abs(offsetMinutes);
      const sign = offsetMinutes < 0 ? '-' : '+';
      return `${year}-${two(month)}-${two(day)}T${clock}:00${sign}${two(Math.floor(ahead / 60))}:${two(ahead % 60)}`;
    }
    case 'us':
      return `${month}/${day}/${year} ${clock}`;
    case 'us-ampm':
      return `${two(month)}/${two(day)}/${year} ${((hour + 11) % 12) + 1}:${two(local.getUTCMinutes())}:00 ${hour < 12 ? 'AM' : 'PM'}`;
    case 'day-first':
      return `${two(day)}/${two(month)}/${year} ${clock}`;
    case 'dotted':
      return `${two(day)}.${two(month)}.${year} ${clock}:00`;
  }
}
