import { h, visible } from '../dom.ts';

export interface PlainColumn {
  readonly title: string;
  readonly number?: true;
}

/** A number keeps its unit and an interval its ends on one line; only before the interval may it break. */
const unbroken = (text: string): string => text.replaceAll(' ', '\u00a0').replace('\u00a0(', ' (');

/**
 * A table of words; the first cell of a row is its heading. The roles are those of the elements: they are told because
 * phones lay the rows out as blocks, and would no longer take them for rows.
 */
export function plainTable(
  label: string,
  columns: readonly PlainColumn[],
  rows: readonly (readonly string[])[],
): HTMLElement {
  const aligned = (k: number) => (columns[k]?.number ? { class: 'number' } : {});
  return h(
    'div',
    { class: 'scroll', role: 'region', tabindex: '0', 'aria-label': label },
    h(
      'table',
      { class: 'worded', role: 'table' },
      h(
        'thead',
        { role: 'rowgroup' },
        h(
          'tr',
          { role: 'row' },
          columns.map(({ title }, k) =>
            h('th', { scope: 'col', role: 'columnheader', ...aligned(k) }, title),
          ),
        ),
      ),
      h(
        'tbody',
        { role: 'rowgroup' },
        rows.map(([first = '', ...cells]) =>
          h(
            'tr',
            { role: 'row' },
            h('th', { scope: 'row', role: 'rowheader' }, visible(first)),
            cells.map((cell, k) => {
              const text = columns[k + 1]?.number ? unbroken(visible(cell)) : visible(cell);
              const title = columns[k + 1]?.title ?? '';
              const attributes = { role: 'cell', 'data-title': title, ...aligned(k + 1) };
              return h('td', attributes, cell === '' ? '–' : text);
            }),
          ),
        ),
      ),
    ),
  );
}
