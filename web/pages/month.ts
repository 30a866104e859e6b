import { writeAddress } from '../address.ts';
import { h, visible } from '../dom.ts';
import { followWork } from '../follow-work.ts';
import { monthName } from '../month-name.ts';
import { progressView } from '../parts/progress.ts';
import { trouble } from '../parts/trouble.ts';
import { monthAddress, readResult } from '../server.ts';
import type { Page } from './page.ts';

/** Waits for the report of a month, or of all days, to be made, and gives way to it. */
export async function monthPage(id: string, month: string): Promise<Page> {
  const { report } = await readResult(id);
  const site = visible(report.title);
  const name = visible(monthName(month));
  const progress = progressView('The month');
  progress.show({ stage: 'waiting', share: null });
  const state = h('div', {}, progress.element);
  const abort = new AbortController();
  const back = h('p', {}, h('a', { href: writeAddress({ page: 'site', id }) }, `Back to ${site}`));
  const wait = async (): Promise<void> => {
    try {
      location.replace(await followWork(monthAddress(id, month), progress.show, abort.signal));
    } catch (error) {
      if (!abort.signal.aborted) state.replaceChildren(trouble(error), back);
    }
  };
  return {
    title: `${name} · ${site} · rimelog`,
    where: site,
    content: h(
      'div',
      { class: 'home' },
      h('h1', {}, name),
      h(
        'p',
        { class: 'quiet' },
        'The report is made once, from the export, and kept; it opens here when it is ready.',
      ),
      state,
    ),
    shown: () => void wait(),
    dispose: () => abort.abort(),
  };
}
