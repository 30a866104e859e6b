import type { Diagnosis } from '../model/finding.ts';
import type { ImportReport } from '../model/import-report.ts';
import type { Log } from '../model/log.ts';
import { formatDays, formatMinutes } from '../units/display.ts';
import { spanText } from './local-time.ts';
import type { ReportOrder } from './report-order.ts';

const plural = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** The store's name, else the export's: reports have to be told apart. */
export function siteTitle({ site }: Log, report: ImportReport): string {
  if (site !== '') return site;
  const [first, ...more] = report.files.map(({ name }) => name);
  if (first === undefined) return 'Unnamed store';
  return more.length === 0 ? first : `${first} and ${plural(more.length, 'more file')}`;
}

/** `1 Sep to 30 Sep 2026 (30 days, every 1 minute) · 13 circuits, 38 air probes`. */
export function restsOn(log: Log): string {
  const minutes = (log.grid.count * log.grid.stepMs) / 60_000;
  const length = minutes < 2 * 1440 ? formatMinutes(minutes) : formatDays(Math.round(minutes / 1440));
  const probes = log.circuits.reduce((sum, { probes }) => sum + probes.length, 0);
  const step = formatMinutes(log.grid.stepMs / 60_000);
  const circuits = plural(log.circuits.length, 'circuit');
  return `${spanText(log)} (${length}, a reading every ${step.replace(/^1 /, '')}), ${circuits}, ${plural(probes, 'air probe')}`;
}

/** What there is to say of an export in which no circuit was found: not that all is well. */
export const noCircuits =
  'No circuit was judged: no column of this export was recognised as the air of a case. Say in a site file which columns are, and analyse again.';

/** What the whole site comes to, in one sentence. */
export function headline(order: ReportOrder, diagnosis: Diagnosis, log: Log): string {
  const acts = order.places.filter(({ worst }) => worst === 'act').length;
  const watches = order.places.length - acts;
  if (log.circuits.length === 0) {
    const racks = order.places.length === 0 ? '' : ` ${placesText(acts, watches, order.places.length)}`;
    return `${noCircuits}${racks}`;
  }
  if (order.places.length === 0) {
    const unjudged = new Set(diagnosis.abstentions.map(({ circuit }) => circuit).filter((id) => id !== null));
    const limits =
      unjudged.size === 0
        ? 'every analysis could judge every circuit'
        : `some questions stay open on ${plural(unjudged.size, 'circuit')}, listed below`;
    const short = tooShortForDrift(diagnosis, log);
    if (short !== null) return `${short} Nothing of that stands above a note; ${limits}.`;
    return `Nothing here needs a visit: ${plural(log.circuits.length, 'circuit')} over this span show no drift, no probe at odds with its neighbours, and nothing else above a note; ${limits}.`;
  }
  return placesText(acts, watches, order.places.length);
}

/** Where no circuit has days enough for a drift, that none is seen says nothing; null where one has. */
export function tooShortForDrift({ abstentions }: Diagnosis, log: Log): string | null {
  const short = abstentions
    .filter(({ analysis }) => analysis === 'upward-drift')
    .map(({ circuit }) => circuit);
  if (!log.circuits.every(({ id }) => short.includes(id))) return null;
  return 'Too short to show a drift: of an export like this only what is sudden, dead or switched off can be judged.';
}

function placesText(acts: number, watches: number, places: number): string {
  const parts: string[] = [];
  if (acts > 0) parts.push(`${plural(acts, 'place needs', 'places need')} work`);
  if (watches > 0) parts.push(`${plural(watches, 'place is', 'places are')} to be watched`);
  return `${parts.join(', ')}${places > 1 ? '; worst first' : ''}.`;
}
