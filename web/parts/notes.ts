import { circuitAddress } from '../address.ts';
import { h, visible } from '../dom.ts';
import type { SiteResult } from '../server.ts';
import { severityBadge } from './severity.ts';

/** What is worth knowing and needs no visit, folded. */
export function notesList(exportId: string, { document: found, report }: SiteResult): HTMLElement | null {
  const notes = found.findings.filter(({ severity }) => severity === 'note');
  if (notes.length === 0) return null;
  const item = ({ id, circuit }: (typeof notes)[number]): HTMLElement => {
    const place = visible(report.findings[id]!.place);
    return h(
      'li',
      {},
      severityBadge('note', report.words),
      ' ',
      circuit === null ? place : h('a', { href: circuitAddress(exportId, circuit) }, place),
      `: ${visible(report.findings[id]!.summary)}`,
    );
  };
  return h(
    'details',
    { class: 'notes' },
    h('summary', {}, `${notes.length} ${notes.length === 1 ? 'note' : 'notes'}: worth knowing, no visit`),
    h('ul', { class: 'bare' }, notes.map(item)),
  );
}
