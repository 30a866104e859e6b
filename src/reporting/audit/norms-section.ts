import { airView } from '../../audit/air-view.ts';
import type { MonthAudit } from '../../audit/month-audit.ts';
import { type Html, html } from '../html/escape.ts';
import { htmlTable, numberColumn, wordColumn } from '../html/table.ts';
import { normRow } from '../norms/norm-row.ts';
import { normsLegend } from '../norms/norms-terminal.ts';
import { circuitTitle } from '../report-order.ts';

/** What is usual on every circuit and suction group, and what each figure shows at the end. */
export function normsSection({ scope }: MonthAudit): Html {
  const norms = airView(scope).norms;
  const heading = html`<h2>What is normal here</h2>`;
  const places = [...new Set(norms.map((norm) => norm.circuit ?? `group ${norm.suctionGroup}`))];
  if (places.length === 0) {
    return html`${heading}<p>Not known yet: three quiet days are needed, days without a finding.</p>`;
  }
  const columns = [
    wordColumn('Figure'),
    wordColumn('Usual (p10 to p90)'),
    numberColumn('At the end'),
    wordColumn('Which is'),
    wordColumn('Peers'),
  ];
  const table = (place: string): Html => {
    const own = norms.filter((norm) => (norm.circuit ?? `group ${norm.suctionGroup}`) === place);
    const { circuit, quietDays } = own[0]!;
    const title = circuit === null ? `Suction ${place}` : circuitTitle(scope.log, place);
    return html`<details><summary>${title}, from ${quietDays} quiet days</summary>${htmlTable(
      `What is normal on ${title}`,
      columns,
      own.map((norm) => normRow(norm, norms, scope.signals)),
    )}</details>`;
  };
  return html`<div class="on-screen">${heading}
${places.map(table)}
<p class="quiet">${normsLegend}</p></div>`;
}
