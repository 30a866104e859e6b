import { h } from '../dom.ts';
import type { Progress } from '../json.ts';

export interface ProgressView {
  readonly element: HTMLElement;
  show(progress: Progress): void;
}

/** How far an analysis is: its stage in words, and a bar. */
export function progressView(label: string): ProgressView {
  const stage = h('p', { class: 'lead', 'aria-live': 'polite' });
  const bar = h('progress', { 'aria-label': label });
  return {
    element: h('div', { class: 'progress' }, stage, bar),
    show({ stage: name, share }) {
      const text = name === 'waiting' ? 'Waiting for its turn' : name[0]!.toUpperCase() + name.slice(1);
      if (stage.textContent !== `${text} …`) stage.textContent = `${text} …`;
      if (share === null) bar.removeAttribute('value');
      else bar.value = share;
    },
  };
}
