import { type MonthAudit, tableNamed } from '../../audit/month-audit.ts';
import { type Html, html } from '../html/escape.ts';
import { htmlTable, numberColumn, wordColumn } from '../html/table.ts';
import { siteScale } from '../site-scale.ts';
import { cellText, timeText } from './cell-text.ts';
import { viewOf } from './table-view.ts';

export function changesSection(audit: MonthAudit): Html {
  const { temperatureSign: sign } = siteScale(audit.scope.log);
  const { rows } = viewOf(tableNamed(audit, 'changes'));
  const heading = html`<h2>Set-point changes, stops, overrides</h2>`;
  if (rows.length === 0) {
    return html`${heading}<p>None is seen: no set point moved, no circuit was shut off, no valve was held open.</p>`;
  }
  const columns = [
    wordColumn('When'),
    wordColumn('Circuit'),
    wordColumn('What'),
    numberColumn(`From, ${sign}`),
    numberColumn(`To, ${sign}`),
    wordColumn('Until'),
    wordColumn('Known by'),
  ];
  return html`${heading}
${htmlTable(
  'Changes',
  columns,
  rows.map((row) => [
    timeText(row('at')),
    cellText(row('circuit')),
    cellText(row('what')),
    cellText(row('from'), 1),
    cellText(row('to'), 1),
    row('what') === 'set point' ? '' : row('end') === null ? 'still so' : timeText(row('end')),
    cellText(row('knownFrom')),
  ]),
)}`;
}
