import { type MonthAudit, tableNamed } from '../../audit/month-audit.ts';
import { type Html, html } from '../html/escape.ts';
import { htmlTable, numberColumn, wordColumn } from '../html/table.ts';
import { coldHoldingNote, coldHoldingTitle } from '../limit-words.ts';
import { siteScale } from '../site-scale.ts';
import { cellText, minutesText, shareText, timeText } from './cell-text.ts';
import { type RowView, viewOf } from './table-view.ts';

const mostRows = 25;

const numberIn = (row: RowView, name: string): number => {
  const cell = row(name);
  return typeof cell === 'number' ? cell : 0;
};

function defrostShare(row: RowView): number | null {
  const above = numberIn(row, 'aboveMinutes');
  return above > 0 ? (numberIn(row, 'defrostMinutes') + numberIn(row, 'recoveryMinutes')) / above : null;
}

/** Probes whose air stood above the limit outside defrosts, the most degree-hours first. */
export function exposureSection(audit: MonthAudit): Html {
  const { temperatureSign: sign } = siteScale(audit.scope.log);
  const all = viewOf(tableNamed(audit, 'exposure')).rows;
  const coldHolding = coldHoldingPart(audit, all);
  const settled = all
    .filter((row) => numberIn(row, 'settledMinutes') > 0)
    .sort((a, b) => numberIn(b, 'settledMinutes') - numberIn(a, 'settledMinutes'));
  const rest = all.length - settled.length;
  const cites = [...new Set(all.map((row) => cellText(row('limitFrom'))))];
  const note = html`<p class="quiet">The limit is ${cites.join('; or ')}. Air is held against it, not food: a calibrated thermometer in the goods and the local code decide. Time without a reading counts as neither. With lag: the warmest that a body would have become that follows the air within 60 minutes, a picture and no measurement.</p>`;
  const heading = html`<h2>Air above its limit</h2>`;
  if (all.length === 0) {
    return html`${heading}<p>No circuit has a set point or a limit that its air could be held against.</p>`;
  }
  if (settled.length === 0) {
    return html`${heading}<p>No probe stood above its limit outside defrosts and the hour after them.</p>${note}${coldHolding}`;
  }
  const columns = [
    wordColumn('Probe'),
    wordColumn('Circuit'),
    numberColumn(`Limit, ${sign}`),
    numberColumn('Above it, settled'),
    numberColumn('Above it, all'),
    numberColumn('Of it defrost and recovery'),
    numberColumn(`Degree-hours, ${sign}·h`),
    numberColumn('Longest'),
    wordColumn('From'),
    numberColumn(`With lag, ${sign}`),
    numberColumn('Unknown'),
  ];
  const rows = settled
    .slice(0, mostRows)
    .map((row) => [
      cellText(row('probe')),
      cellText(row('circuit')),
      cellText(row('limit'), 1),
      minutesText(row('settledMinutes')),
      minutesText(row('aboveMinutes')),
      shareText(defrostShare(row)),
      cellText(row('degreeHours'), 1),
      minutesText(row('longestMinutes')),
      timeText(row('longestStart')),
      cellText(row('lag60Peak'), 1),
      minutesText(row('unknownMinutes')),
    ]);
  const more =
    settled.length > mostRows ? html`<p>And ${settled.length - mostRows} more in exposure.csv.</p>` : null;
  return html`${heading}
${htmlTable('Air above its limit', columns, rows)}${more}
${rest === 0 ? null : html`<p>The other ${rest} probes stood above theirs in defrosts and the hour after them at most.</p>`}
${note}${coldHolding}`;
}

/** The published cold-holding limit beside alarm limits that are others: an alarm may be set wider. */
function coldHoldingPart({ scope: { log } }: MonthAudit, all: readonly RowView[]): Html | null {
  const beside = all.filter(
    (row) => row('coldHoldingLimit') !== null && row('coldHoldingLimit') !== row('limit'),
  );
  if (beside.length === 0) return null;
  const rows = beside
    .filter((row) => numberIn(row, 'coldHoldingSettledMinutes') > 0)
    .sort((a, b) => numberIn(b, 'coldHoldingSettledMinutes') - numberIn(a, 'coldHoldingSettledMinutes'));
  const heading = html`<h3>Held against ${coldHoldingTitle(log)}</h3>`;
  const note = html`<p class="quiet">${coldHoldingNote}</p>`;
  if (rows.length === 0) {
    return html`${heading}<p>No probe whose alarm limit is another one stood above it outside defrosts and the hour after them.</p>${note}`;
  }
  const columns = [
    wordColumn('Probe'),
    wordColumn('Circuit'),
    numberColumn('Above it, settled'),
    numberColumn('Above it, all'),
    numberColumn(`Degree-hours, ${siteScale(log).temperatureSign}·h`),
    numberColumn('Longest'),
  ];
  const more =
    rows.length > mostRows ? html`<p>And ${rows.length - mostRows} more in exposure.csv.</p>` : null;
  return html`${heading}
${htmlTable(
  'Air above the published cold-holding limit',
  columns,
  rows
    .slice(0, mostRows)
    .map((row) => [
      cellText(row('probe')),
      cellText(row('circuit')),
      minutesText(row('coldHoldingSettledMinutes')),
      minutesText(row('coldHoldingAboveMinutes')),
      cellText(row('coldHoldingDegreeHours'), 1),
      minutesText(row('coldHoldingLongestMinutes')),
    ]),
)}${more}
${note}`;
}
