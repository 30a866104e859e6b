import { writeAddress } from '../address.ts';
import { h } from '../dom.ts';
import type { ExportEntry } from '../json.ts';
import { exportList } from '../parts/export-list.ts';
import type { ExportOrder } from '../parts/export-order.ts';
import { uploadForm } from '../parts/upload-form.ts';
import { listExports } from '../server.ts';
import type { Page } from './page.ts';

const askEveryMs = 2000;

/** Asks for the list as long as an analysis runs or waits, and tells when one of them has got further. */
function whileUnfinished(
  first: readonly ExportEntry[],
  onChange: (exports: readonly ExportEntry[]) => void,
): () => void {
  const states = (entries: readonly ExportEntry[]): string =>
    entries.map(({ id, state }) => `${id} ${state}`).join();
  let known = first;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const wait = (): void => {
    const isUnfinished = known.some(({ state }) => state === 'waiting' || state === 'analysing');
    timer = isUnfinished ? setTimeout(() => void ask(), askEveryMs) : undefined;
  };
  const ask = async (): Promise<void> => {
    const { exports } = await listExports().catch(() => ({ exports: known }));
    if (timer === undefined) return;
    if (states(exports) !== states(known)) onChange(exports);
    known = exports;
    wait();
  };
  wait();
  return () => {
    clearTimeout(timer);
    timer = undefined;
  };
}

/** Where exports come in, and those that have. */
export async function homePage(): Promise<Page> {
  const { exports } = await listExports();
  let entries = exports;
  let order: ExportOrder = 'newest';
  const onOrder = (chosen: ExportOrder): void => {
    order = chosen;
    show(entries);
    document.getElementById('order')?.focus();
  };
  let list = exportList(entries, { order, onOrder });
  const show = (now: readonly ExportEntry[]): void => {
    entries = now;
    const next = exportList(now, { order, onOrder });
    list.replaceWith(next);
    list = next;
  };
  const stop = whileUnfinished(exports, show);
  const content = h(
    'div',
    { class: 'home' },
    h('h1', {}, 'Which circuits are in trouble?'),
    h(
      'p',
      { class: 'lead' },
      'Give rimelog the history that your refrigeration controller exports. It lists the circuits worst first: what is wrong, since when, how sure, and what to check before anything else.',
    ),
    uploadForm((id) => {
      location.hash = writeAddress({ page: 'site', id });
    }),
    list,
  );
  return { title: 'rimelog', where: '', content, dispose: stop };
}
