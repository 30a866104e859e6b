import { circuitAddress, groupAddress } from '../address.ts';
import { h, visible } from '../dom.ts';
import type { ComparedPlaceDocument, ComparisonDocument } from '../json.ts';
import { plainTable } from './plain-table.ts';

type Figures = ComparedPlaceDocument['figures'];

function figureTable(label: string, figures: Figures): HTMLElement {
  return plainTable(
    label,
    [
      { title: 'Figure' },
      { title: 'Before', number: true },
      { title: 'After', number: true },
      { title: 'Change (95 %)', number: true },
    ],
    figures.map(({ title, words: { before, after, change } }) => [title, before, after, change]),
  );
}

function changedPlace(exportId: string, { kind, id, title, figures }: ComparedPlaceDocument): HTMLElement {
  const href = kind === 'circuit' ? circuitAddress(exportId, id) : groupAddress(exportId, id);
  const steady = figures.filter(({ changed }) => !changed);
  return h(
    'section',
    {},
    h('h3', {}, h('a', { href }, visible(title))),
    figureTable(
      `What changed on ${visible(title)}`,
      figures.filter(({ changed }) => changed),
    ),
    steady.length > 0 &&
      h(
        'details',
        {},
        h('summary', {}, 'What did not change there'),
        figureTable(`What did not change on ${visible(title)}`, steady),
      ),
  );
}

/** What changed from the earlier export to the later one, the largest changes first. */
export function comparisonAnswer(exportId: string, comparison: ComparisonDocument): HTMLElement {
  const changed = comparison.places.filter((place) => place.changed);
  return h(
    'section',
    { class: 'compared', 'aria-labelledby': 'compared' },
    h('h2', { id: 'compared' }, visible(comparison.heading)),
    h('p', { class: 'lead', role: 'status' }, visible(comparison.summary)),
    changed.map((place) => changedPlace(exportId, place)),
    h(
      'ul',
      { class: 'bare' },
      comparison.remarks.map((line) => h('li', {}, visible(line))),
    ),
    h('p', { class: 'quiet' }, visible(comparison.method)),
  );
}
