import { h } from '../dom.ts';
import { followWork } from '../follow-work.ts';
import { readJson } from '../server.ts';
import { progressView } from './progress.ts';
import { trouble } from './trouble.ts';

/** Where an answer that has to be made appears: its progress, then the answer or what went wrong. */
export class WorkRegion {
  readonly element = h('div', { class: 'work' });
  readonly #abort = new AbortController();

  /** Asks for the JSON at `address` and puts what `show` makes of it in place. */
  async ask<T>(address: string, label: string, show: (answer: T) => HTMLElement): Promise<void> {
    const progress = progressView(label);
    progress.show({ stage: 'waiting', share: null });
    this.element.replaceChildren(progress.element);
    this.element.setAttribute('aria-busy', 'true');
    const { signal } = this.#abort;
    try {
      const answer = await readJson<T>(await followWork(address, progress.show, signal), signal);
      this.element.replaceChildren(show(answer));
    } catch (error) {
      if (signal.aborted) return;
      this.element.replaceChildren(trouble(error));
    }
    this.element.removeAttribute('aria-busy');
  }

  dispose(): void {
    this.#abort.abort();
  }
}
