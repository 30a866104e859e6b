import { type Address, goTo, writeAddress } from '../address.ts';
import { h, visible } from '../dom.ts';
import type { ComparisonDocument, ExportEntry } from '../json.ts';
import { askForm } from '../parts/ask-form.ts';
import { comparisonAnswer } from '../parts/comparison-answer.ts';
import { WorkRegion } from '../parts/work-region.ts';
import { comparisonAddress, listExports, readResult } from '../server.ts';
import type { Page } from './page.ts';

export type CompareAddress = Extract<Address, { page: 'compare' }>;

type ReadyExport = ExportEntry & { readonly summary: NonNullable<ExportEntry['summary']> };

/** Those that can be compared with this one, of the same site first, the latest span first. */
function othersOf(id: string, site: string, entries: readonly ExportEntry[]): readonly ReadyExport[] {
  return entries
    .filter((entry): entry is ReadyExport => entry.id !== id && entry.summary !== null)
    .sort(
      (a, b) =>
        Number(b.summary.site === site) - Number(a.summary.site === site) ||
        b.summary.start.localeCompare(a.summary.start),
    );
}

function choice(
  { id, files, summary: { site, start, end } }: ReadyExport,
  against: string | null,
): HTMLElement {
  const name = visible(site || files.map((file) => file.name).join(', '));
  const text = `${name}, ${start.slice(0, 10)} to ${end.slice(0, 10)}`;
  return h('option', { value: id, selected: id === against }, text);
}

function chooseForm(address: CompareAddress, others: readonly ReadyExport[]): HTMLElement {
  const other = h(
    'select',
    { id: 'against' },
    others.map((entry) => choice(entry, address.against)),
  );
  return askForm({ title: 'The other export', label: 'With', field: other, button: 'Compare' }, (against) =>
    goTo({ ...address, against }),
  );
}

const nothingElse =
  'There is no other export here. Send that of another month from the list of exports, then come back.';

/** This export against another of the same site: this month against the last one. */
export async function comparePage(address: CompareAddress): Promise<Page> {
  const { id, against } = address;
  const [{ document: found, report }, { exports }] = await Promise.all([readResult(id), listExports()]);
  const site = visible(report.title);
  const others = othersOf(id, report.title, exports);
  const region = new WorkRegion();
  return {
    title: `Compare · ${site} · rimelog`,
    where: site,
    content: h(
      'div',
      { class: 'answered' },
      h(
        'nav',
        { class: 'turn', 'aria-label': 'Back' },
        h('a', { href: writeAddress({ page: 'site', id }) }, site),
      ),
      h('h1', {}, 'Compare with another export'),
      h(
        'p',
        { class: 'lead' },
        `${site}, ${found.span.start.slice(0, 10)} to ${found.span.end.slice(0, 10)}`,
      ),
      others.length === 0
        ? h('p', {}, nothingElse, ' ', h('a', { href: '#/' }, 'The list of exports'))
        : chooseForm(address, others),
      region.element,
      h('p', { class: 'air' }, found.notice),
    ),
    shown: () => {
      if (against === null) return;
      const show = (comparison: ComparisonDocument): HTMLElement => comparisonAnswer(id, comparison);
      void region.ask(comparisonAddress(id, against), 'The comparison', show);
    },
    dispose: () => region.dispose(),
  };
}
