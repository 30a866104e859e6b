import { h, visible } from '../dom.ts';

export interface PlainColumn {
  readonly title: string;
  readonly number?: true;
}

/** A number keeps its unit and an interval its ends on one line; only before the interval may it break. */
const unbroken = (text: string): string => text.replaceAll(' ', '\u00a0').replace('\u00a0(', ' (');

/** A table of words; the first cell of a row is its heading. */
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
      { class: 'worded' },
      h(
        'thead',
        {},
        h(
          'tr',
          {},
          columns.map(({ title }, k) => h('th', { scope: 'col', ...aligned(k) }, title)),
        ),
      ),
      h(
        'tbody',
        {},
        rows.map(([first = '', ...cells]) =>
          h(
            'tr',
            {},
            h('th', { scope: 'row' }, visible(first)),
            cells.map((cell, k) => {
              const text = columns[k + 1]?.number ? unbroken(visible(cell)) : visible(cell);
              return h('td', aligned(k + 1), cell === '' ? '–' : text);
            }),
          ),
        ),
      ),
    ),
  );
}
