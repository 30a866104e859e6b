import { h, visible } from '../dom.ts';
import type { Finding } from '../json.ts';
import type { SiteResult } from '../server.ts';
import { causeParts, factList, lookAlikes, measured } from './finding.ts';
import { severityBadge } from './severity.ts';

/** All that is known of one finding. `said`: its sentence stands above already. */
export function findingSection(
  exportId: string,
  finding: Finding,
  said: boolean,
  { report }: SiteResult,
): HTMLElement {
  return h(
    'section',
    { class: `finding ${finding.severity}` },
    h(
      'h2',
      {},
      severityBadge(finding.severity, report.words),
      ' ',
      report.words.kind[finding.kind] ?? finding.kind,
    ),
    !said && h('p', { class: 'summary' }, visible(report.findings[finding.id]!.summary)),
    h(
      'div',
      { class: 'columns' },
      h('div', {}, factList(exportId, finding, report), lookAlikes(finding, 'h3'), measured(finding)),
      causeParts(finding, report, 'h3'),
    ),
  );
}
