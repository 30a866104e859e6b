import { instantFrom } from '../importing/assembling/cut-times.ts';
import { ImportRefusal } from '../importing/readings.ts';
import { timeAt } from '../model/grid.ts';
import type { Log } from '../model/log.ts';
import { formatLocalTime } from '../units/display.ts';
import type { EpochMs } from '../units/quantities.ts';

/**
 * When a circuit was serviced, from text on the site's clock. Throws ImportRefusal for a text that is no time and
 * for a time outside the export; `option` is what the caller calls it.
 */
export function serviceTime(text: string, log: Log, option: string): EpochMs {
  const serviced = instantFrom(text, log.calendar.timeZone, option);
  const first = log.grid.startMs;
  const last = timeAt(log.grid, log.grid.count - 1);
  if (serviced > first && serviced <= last) return serviced;
  throw new ImportRefusal(
    'service-outside-export',
    `${option} ${text} lies outside the export, which runs from ${formatLocalTime(first, log)} to ${formatLocalTime(last, log)}; give an export that holds days before and after it.`,
  );
}
