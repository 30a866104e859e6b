import { h, visible } from '../dom.ts';
import { Refusal, refusalIn, unreachable } from '../server.ts';
import { trouble } from './trouble.ts';

const siteFileName = /\.(ya?ml|json)$/i;

/** Sends a form and tells how much of it has gone; rejects with a Refusal. */
function send(form: FormData, onProgress: (share: number) => void): Promise<{ id: string }> {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open('POST', '/api/v1/exports');
    request.responseType = 'json';
    request.upload.addEventListener('progress', ({ loaded, total }) =>
      onProgress(total > 0 ? loaded / total : 0),
    );
    request.addEventListener('load', () => {
      if (request.status === 202) resolve(request.response as { id: string });
      else reject(refusalIn(request.response));
    });
    request.addEventListener('error', () => reject(new Refusal(unreachable)));
    request.send(form);
  });
}

function sizeText(bytes: number): string {
  return bytes < 100_000 ? `${Math.ceil(bytes / 1000)} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
}

/** Where exports are dropped or chosen, with a site file if there is one. Calls `onAccepted` with the id. */
export function uploadForm(onAccepted: (id: string) => void): HTMLElement {
  const exports = h('input', {
    type: 'file',
    id: 'exports',
    multiple: true,
    'aria-describedby': 'exports-help',
  });
  const site = h('input', { type: 'file', id: 'site', accept: '.yaml,.yml,.json' });
  const chosen = h('ul', { class: 'chosen', 'aria-live': 'polite' });
  const button = h('button', { type: 'submit', disabled: true }, 'Analyse');
  const state = h('div', { class: 'state', 'aria-live': 'polite' });
  const bar = h('progress', { max: 1, value: 0, 'aria-label': 'Sending' });
  let files: File[] = [];
  let siteFile: File | null = null;

  const refresh = (): void => {
    chosen.replaceChildren(
      ...files.map((file) => h('li', {}, h('strong', {}, visible(file.name)), ` ${sizeText(file.size)}`)),
      ...(siteFile === null
        ? []
        : [h('li', {}, h('strong', {}, visible(siteFile.name)), ' as the site file')]),
    );
    button.disabled = files.length === 0;
  };
  const take = (list: FileList | null): void => {
    const all = [...(list ?? [])];
    files = all.filter(({ name }) => !siteFileName.test(name));
    siteFile = all.find(({ name }) => siteFileName.test(name)) ?? siteFile;
    refresh();
    if (files.length > 0) button.focus();
  };
  const submit = async (): Promise<void> => {
    const form = new FormData();
    for (const file of files) form.append('export', file);
    if (siteFile !== null) form.append('site', siteFile);
    button.disabled = true;
    bar.value = 0;
    state.replaceChildren(h('p', {}, 'Sending to the server on this machine …'), bar);
    try {
      onAccepted((await send(form, (share) => (bar.value = share))).id);
    } catch (error) {
      state.replaceChildren(trouble(error));
      button.disabled = false;
    }
  };

  exports.addEventListener('change', () => take(exports.files));
  site.addEventListener('change', () => {
    siteFile = site.files?.[0] ?? null;
    refresh();
  });
  const zone = h(
    'form',
    {
      class: 'drop',
      'aria-label': 'New export',
      onsubmit: (event) => {
        event.preventDefault();
        void submit();
      },
      ondragover: (event) => {
        event.preventDefault();
        zone.classList.add('over');
      },
      ondragleave: () => zone.classList.remove('over'),
      ondrop: (event) => {
        event.preventDefault();
        zone.classList.remove('over');
        take((event as DragEvent).dataTransfer?.files ?? null);
      },
    },
    h('label', { class: 'big', for: 'exports' }, 'Drop exports here, or choose them'),
    exports,
    h(
      'p',
      { class: 'quiet', id: 'exports-help' },
      'CSV as your controller writes it, one file or several, also .gz or .zip. Nothing has to be cleaned first.',
    ),
    h(
      'details',
      {},
      h('summary', {}, 'I have a site file that says what the columns are'),
      h('p', {}, h('label', { for: 'site' }, 'Site file (YAML or JSON) '), site),
      h(
        'p',
        { class: 'quiet' },
        'Without one the columns are guessed; the guess is shown with the findings and can be saved, corrected and sent along next time.',
      ),
    ),
    chosen,
    button,
    state,
  );
  return zone;
}
