import { writeAddress } from '../address.ts';
import { h } from '../dom.ts';
import { exportList } from '../parts/export-list.ts';
import { uploadForm } from '../parts/upload-form.ts';
import { listExports } from '../server.ts';
import type { Page } from './page.ts';

/** Where exports come in, and those that have. */
export async function homePage(): Promise<Page> {
  const { exports } = await listExports();
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
    exportList(exports),
  );
  return { title: 'rimelog', where: '', content };
}
