import { type MonthAudit, tableNamed } from '../../audit/month-audit.ts';
import { type Html, html } from '../html/escape.ts';
import { htmlTable, numberColumn, wordColumn } from '../html/table.ts';
import { placesText } from '../open-questions.ts';
import { cellText, minutesText, shareText, timeText } from './cell-text.ts';
import { groupRows, type RowView, viewOf } from './table-view.ts';

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
    wordColumn('Points'),
    numberColumn('Logged'),
    numberColumn('Longest gap'),
    wordColumn('From'),
  ];
  const alike = groupRows(short, ['coverage', 'longestGapMinutes', 'longestGapStart']);
  return html`${heading}${sentence}
${htmlTable(
  'Points with gaps',
  columns,
  alike
    .slice(0, mostRows)
    .map((group) => [
      pointsText(group),
      shareText(group[0]!('coverage')),
      minutesText(group[0]!('longestGapMinutes')),
      timeText(group[0]!('longestGapStart')),
    ]),
)}${alike.length > mostRows ? html`<p>And ${alike.length - mostRows} more rows in points.csv.</p>` : null}`;
}

/** Points that fell silent together are named together. */
function pointsText(rows: readonly RowView[]): string {
  const names = placesText(
    rows.map((row) => cellText(row('point'))),
    4,
  );
  return rows.length > 4 ? `${rows.length} points: ${names}` : names;
}
