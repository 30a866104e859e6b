import { type MonthAudit, tableNamed } from '../../audit/month-audit.ts';
import { type Html, html } from '../html/escape.ts';
import { htmlTable, numberColumn, wordColumn } from '../html/table.ts';
import { cellText, minutesText, shareText, timeText } from './cell-text.ts';
import { viewOf } from './table-view.ts';

/** Below this share a point is named in the report. */
const fullCoverage = 0.99;
const mostRows = 30;

export function coverageSection(audit: MonthAudit): Html {
  const { rows } = viewOf(tableNamed(audit, 'points'));
  const short = rows
    .filter((row) => (row('coverage') as number) < fullCoverage)
    .sort((a, b) => (a('coverage') as number) - (b('coverage') as number));
  const heading = html`<h2>What was logged</h2>`;
  const full = rows.length - short.length;
  const sentence = html`<p>${full} of ${rows.length} points are there for 99 % of the time or more.</p>`;
  if (short.length === 0) return html`${heading}${sentence}`;
  const columns = [
    wordColumn('Point'),
    wordColumn('Belongs to'),
    numberColumn('Logged'),
    numberColumn('Longest gap'),
    wordColumn('From'),
  ];
  return html`${heading}${sentence}
${htmlTable(
  'Points with gaps',
  columns,
  short
    .slice(0, mostRows)
    .map((row) => [
      cellText(row('point')),
      cellText(row('belongsTo')),
      shareText(row('coverage')),
      minutesText(row('longestGapMinutes')),
      timeText(row('longestGapStart')),
    ]),
)}${short.length > mostRows ? html`<p>And ${short.length - mostRows} more in points.csv.</p>` : null}`;
}
