import { writeAddress } from '../address.ts';
import { h } from '../dom.ts';
import { analyseAgain } from '../server.ts';
import { trouble } from './trouble.ts';

/** Takes a corrected site file and analyses the export that is stored here anew. */
export function siteAgain(exportId: string): HTMLElement {
  const file = h('input', { type: 'file', id: 'site-again', accept: '.yaml,.yml,.json' });
  const button = h('button', { type: 'submit', disabled: true }, 'Analyse again');
  const state = h('div', { 'aria-live': 'polite' });
  file.addEventListener('change', () => {
    button.disabled = file.files?.length !== 1;
  });
  const submit = async (): Promise<void> => {
    const chosen = file.files?.[0];
    if (chosen === undefined) return;
    button.disabled = true;
    try {
      const { id } = await analyseAgain(exportId, await chosen.text());
      location.hash = writeAddress({ page: 'site', id });
    } catch (error) {
      state.replaceChildren(trouble(error));
      button.disabled = false;
    }
  };
  return h(
    'form',
    {
      class: 'site-again',
      'aria-label': 'Another site file',
      onsubmit: (event) => {
        event.preventDefault();
        void submit();
      },
    },
    h('p', {}, h('label', { for: 'site-again' }, 'A corrected site file (YAML or JSON) '), file),
    h('p', { class: 'quiet' }, 'The export need not be sent again; what stands here stays in the list.'),
    button,
    state,
  );
}
