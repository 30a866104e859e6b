import { writeAddress } from '../address.ts';
import { h, visible } from '../dom.ts';
import type { ExportEntry } from '../json.ts';
import { deleteExport } from '../server.ts';
import { type ExportOrder, inOrder } from './export-order.ts';
import { countsText } from './severity.ts';
import { trouble } from './trouble.ts';

function stateText(entry: ExportEntry): string {
  if (entry.summary !== null) {
    const { circuits, findings } = entry.summary;
    return circuits === 0 ? 'no circuit was judged' : countsText(findings);
  }
  if (entry.state === 'failed') return `not analysed: ${entry.problem?.message ?? 'unknown reason'}`;
  return entry.state === 'waiting' ? 'waiting' : 'being analysed';
}

function spanText({ summary }: ExportEntry): string {
  return summary === null ? '' : `${summary.start.slice(0, 10)} to ${summary.end.slice(0, 10)}`;
}

function titleOf({ summary, files }: ExportEntry): string {
  const [first = 'Export', ...others] = files.map(({ name }) => visible(name));
  return visible(summary?.site ?? '') || (others.length === 0 ? first : `${first} and ${others.length} more`);
}

const shapes = { act: '▲', watch: '◆', note: '○' } as const;

function firstStop({ summary }: ExportEntry): HTMLElement | false {
  const stop = summary?.firstStop ?? null;
  if (stop === null) return false;
  return h(
    'span',
    { class: 'first-stop' },
    h('span', { class: stop.severity, 'aria-hidden': 'true' }, `${shapes[stop.severity]} `),
    visible(`${stop.place}: ${stop.summary}`),
  );
}

function row(entry: ExportEntry, removed: () => void): HTMLElement {
  const title = titleOf(entry);
  const remove = h('button', { type: 'button', class: 'plain', 'aria-label': `Delete ${title}` }, 'Delete');
  const item = h(
    'li',
    {},
    h('a', { href: writeAddress({ page: 'site', id: entry.id }) }, title),
    h('span', {}, spanText(entry)),
    h('span', { class: entry.state === 'failed' ? 'failed' : '' }, visible(stateText(entry))),
    h('span', { class: 'quiet' }, `received ${new Date(entry.received).toLocaleString()}`),
    firstStop(entry),
    remove,
  );
  remove.addEventListener('click', async () => {
    if (remove.textContent === 'Delete') {
      remove.textContent = 'Really delete it?';
      setTimeout(() => (remove.textContent = 'Delete'), 5000);
      return;
    }
    try {
      await deleteExport(entry.id);
      item.remove();
      removed();
    } catch (error) {
      item.append(trouble(error));
    }
  });
  return item;
}

interface Ordered {
  readonly order: ExportOrder;
  readonly onOrder: (order: ExportOrder) => void;
}

/** What was sent before. */
export function exportList(entries: readonly ExportEntry[], { order, onOrder }: Ordered): HTMLElement {
  const list = h('ul', { class: 'exports' });
  const empty = h('p', { class: 'quiet' }, 'None yet.');
  const refresh = (): void => {
    empty.hidden = list.children.length > 0;
  };
  list.append(...inOrder(entries, order).map((entry) => row(entry, refresh)));
  refresh();
  const ready = entries.filter(({ summary }) => summary !== null).length;
  return h(
    'section',
    { 'aria-labelledby': 'earlier' },
    h('h2', { id: 'earlier' }, 'Exports on this machine'),
    ready > 1 && orderChoice(order, onOrder),
    empty,
    list,
  );
}

function orderChoice(order: ExportOrder, onOrder: Ordered['onOrder']): HTMLElement {
  const choice = h(
    'select',
    { id: 'order', onchange: () => onOrder(choice.value as ExportOrder) },
    h('option', { value: 'newest' }, 'newest first'),
    h('option', { value: 'worst' }, 'worst first'),
  );
  choice.value = order;
  return h('p', { class: 'order' }, h('label', { for: 'order' }, 'Order '), choice);
}
