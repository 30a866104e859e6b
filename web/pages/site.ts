import { h, visible } from '../dom.ts';
import { aboutExport } from '../parts/about-export.ts';
import { circuitList } from '../parts/circuit-list.ts';
import { notesList } from '../parts/notes.ts';
import { placeList } from '../parts/places.ts';
import { readExport, readResult } from '../server.ts';
import type { Page } from './page.ts';
import { failedPage, waitingPage } from './waiting.ts';

/** A site's findings, worst first; until they stand, how far the analysis is. */
export async function sitePage(id: string): Promise<Page> {
  const entry = await readExport(id);
  if (entry.state === 'failed') return failedPage(entry);
  if (entry.state !== 'ready') {
    return waitingPage(entry, () => dispatchEvent(new HashChangeEvent('hashchange')));
  }
  const result = await readResult(id);
  const { document: found, report } = result;
  const name = visible(report.title);
  const content = h(
    'div',
    { class: 'site' },
    h(
      'div',
      { class: 'intro' },
      h('h1', {}, name),
      h('p', { class: 'quiet' }, report.restsOn),
      h('p', { class: 'lead' }, report.headline),
      h('p', { class: 'air' }, found.notice),
    ),
    h('div', { class: 'findings' }, placeList(id, result), notesList(id, result), circuitList(id, result)),
    aboutExport(id, entry, report),
  );
  return { title: `${name} · rimelog`, where: name, content };
}
