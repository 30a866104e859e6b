import { h } from '../dom.ts';
import { Refusal } from '../server.ts';

/** What went wrong and what to do about it. */
export function trouble(error: unknown): HTMLElement {
  if (!(error instanceof Refusal)) console.error(error);
  const known = error instanceof Refusal ? error : null;
  return h(
    'div',
    { class: 'trouble', role: 'alert' },
    h('p', {}, h('strong', {}, known?.message ?? 'This page met a fault of its own.')),
    h('p', {}, known?.remedy ?? 'Load it again; if that does not help, please report what you did.'),
  );
}
