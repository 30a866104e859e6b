import { h } from '../dom.ts';
import type { Severity, SiteReport } from '../json.ts';

/** Word, shape and colour. */
export function severityBadge(severity: Severity, words: SiteReport['words']): HTMLElement {
  const { symbol, word, meaning } = words.severity[severity];
  return h(
    'span',
    { class: `badge ${severity}`, title: meaning },
    h('span', { 'aria-hidden': 'true' }, `${symbol} `),
    word,
  );
}

/** `2 act, 1 watch, 4 notes`. */
export function countsText({ act, watch, note }: Readonly<Record<Severity, number>>): string {
  if (act + watch + note === 0) return 'nothing found';
  const parts = [
    act > 0 ? `${act} to act on` : null,
    watch > 0 ? `${watch} to watch` : null,
    note > 0 ? `${note} ${note === 1 ? 'note' : 'notes'}` : null,
  ];
  return parts.filter((part) => part !== null).join(', ');
}
