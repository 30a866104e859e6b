import { h, visible } from '../dom.ts';
import type { ExportEntry, ProblemText, Progress } from '../json.ts';
import { progressView } from '../parts/progress.ts';
import { eventsOf } from '../server.ts';
import type { Page } from './page.ts';

const fileNames = ({ files }: ExportEntry): string => visible(files.map(({ name }) => name).join(', '));

/** Follows an analysis by its events; `onReady` is called when the findings stand. */
export function waitingPage(entry: ExportEntry, onEnd: () => void): Page {
  const { element, show } = progressView('Analysis');
  show(entry.progress ?? { stage: 'waiting', share: null });
  const events = new EventSource(eventsOf(entry.id));
  events.addEventListener('progress', (event) => show(JSON.parse(event.data as string) as Progress));
  for (const last of ['ready', 'failed']) {
    events.addEventListener(last, () => {
      events.close();
      onEnd();
    });
  }
  return {
    title: 'Analysing · rimelog',
    where: fileNames(entry),
    content: h(
      'div',
      { class: 'home' },
      h('h1', {}, 'Analysing'),
      h('p', { class: 'quiet' }, fileNames(entry)),
      element,
    ),
    dispose: () => events.close(),
  };
}

/** One clear sentence on what is wrong with the file, and the way back. */
export function failedPage(entry: ExportEntry): Page {
  const problem: ProblemText = entry.problem ?? { code: '', message: 'The analysis failed.', remedy: '' };
  return {
    title: 'Not analysed · rimelog',
    where: fileNames(entry),
    content: h(
      'div',
      { class: 'home' },
      h('h1', {}, 'This could not be analysed'),
      h(
        'div',
        { class: 'trouble', role: 'alert' },
        h('p', {}, h('strong', {}, visible(problem.message))),
        problem.remedy !== '' && h('p', {}, visible(problem.remedy)),
      ),
      h('p', { class: 'quiet' }, `Sent: ${fileNames(entry)}`),
      h('p', {}, h('a', { href: '#/' }, 'Choose another file')),
    ),
  };
}
