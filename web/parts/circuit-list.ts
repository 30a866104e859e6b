import { circuitAddress, groupAddress } from '../address.ts';
import { h, visible } from '../dom.ts';
import type { CircuitDays } from '../json.ts';
import type { SiteResult } from '../server.ts';
import { severityBadge } from './severity.ts';
import { sparkline } from './sparkline.ts';

/** An export may end with a day too short for a figure of its own. */
const lastDays = 2;

function lastOf(values: readonly (number | null)[]): number | null {
  return values.filter((value) => value !== null).at(-1) ?? null;
}

function airText({ probes }: CircuitDays): string {
  const levels = probes
    .map(({ median }) => lastOf(median.slice(-lastDays)))
    .filter((value) => value !== null);
  if (levels.length === 0) return '–';
  const low = Math.min(...levels).toFixed(1);
  const high = Math.max(...levels).toFixed(1);
  return low === high ? low : `${low} to ${high}`;
}

/** No finding of its own: a rack whose trouble it shares may stand for it. */
function nothingOwn(exportId: string, circuit: string, { findings }: SiteResult['document']): HTMLElement {
  const cover = findings.find(({ severity, covers }) => severity !== 'note' && covers.includes(circuit));
  const group = cover?.suctionGroup ?? null;
  if (group === null) return h('span', { class: 'quiet' }, 'nothing found');
  return h('a', { href: groupAddress(exportId, group) }, visible(`with suction group ${group}`));
}

/** Every circuit in its rank, also those that nothing is wrong with. */
export function circuitList(exportId: string, { document: found, report }: SiteResult): HTMLElement | null {
  if (found.circuits.length === 0) return null;
  const rows = found.circuits.map(({ id, name, rank, worst }) => {
    const days = report.circuits.find((circuit) => circuit.id === id)!;
    const set = lastOf(days.setPoint);
    const title = name === id || name === '' ? id : `${id} ${name}`;
    return h(
      'tr',
      {},
      h('td', { class: 'number' }, rank),
      h('th', { scope: 'row' }, h('a', { href: circuitAddress(exportId, id) }, visible(title))),
      h('td', {}, worst === null ? nothingOwn(exportId, id, found) : severityBadge(worst, report.words)),
      h('td', { class: 'number' }, set === null ? '–' : set.toFixed(1)),
      h('td', { class: 'number' }, airText(days)),
      h('td', { class: 'picture' }, sparkline(days, report.temperatureUnit, new Set(), -1)),
    );
  });
  const unit = report.temperatureUnit;
  return h(
    'section',
    { 'aria-labelledby': 'every-circuit' },
    h('h2', { id: 'every-circuit' }, 'Every circuit'),
    h(
      'div',
      { class: 'scroll', role: 'region', tabindex: '0', 'aria-label': 'Every circuit with its figures' },
      h(
        'table',
        { class: 'circuits' },
        h(
          'thead',
          {},
          h(
            'tr',
            {},
            h('th', { scope: 'col', class: 'number' }, 'Rank'),
            h('th', { scope: 'col' }, 'Circuit'),
            h('th', { scope: 'col' }, 'Verdict'),
            h('th', { scope: 'col', class: 'number' }, `Set point, ${unit}`),
            h('th', { scope: 'col', class: 'number' }, `Air, last day, ${unit}`),
            h('th', { scope: 'col' }, 'Over the span'),
          ),
        ),
        h('tbody', {}, rows),
      ),
    ),
  );
}
