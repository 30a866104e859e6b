import { type MonthAudit, tableNamed } from '../../audit/month-audit.ts';
import { type Html, html } from '../html/escape.ts';
import { htmlTable, numberColumn, wordColumn } from '../html/table.ts';
import { siteScale } from '../site-scale.ts';
import { cellText, minutesText, shareText } from './cell-text.ts';
import { viewOf } from './table-view.ts';

/** Level against set point, spread, reserve, defrosts and recovery of every circuit. */
export function circuitsSection(audit: MonthAudit): Html | null {
  if (audit.scope.log.circuits.length === 0) return null;
  const { temperatureSign: sign } = siteScale(audit.scope.log);
  const rows = viewOf(tableNamed(audit, 'circuits')).rows.map((row) => {
    const [setPoint, median] = [row('setPoint'), row('median')];
    const above = typeof setPoint === 'number' && typeof median === 'number' ? median - setPoint : null;
    return [
      html`${cellText(row('circuit'))} <span class="quiet">${row('name') === row('circuit') ? '' : cellText(row('name'))}</span>`,
      cellText(setPoint, 1),
      cellText(median, 1),
      cellText(above, 1),
      cellText(row('spread'), 1),
      shareText(row('duty')),
      cellText(row('valveStartsPerHour'), 1),
      cellText(row('defrosts')),
      cellText(row('defrostsMissed')),
      minutesText(row('recoveryMedianMinutes')),
      shareText(row('coverage')),
    ];
  });
  const columns = [
    wordColumn('Circuit'),
    numberColumn(`Set point, ${sign}`),
    numberColumn(`Settled air, ${sign}`),
    numberColumn(`Over set point, ${sign}`),
    numberColumn(`Spread of probes, ${sign}`),
    numberColumn('Valve open'),
    numberColumn('Openings an hour'),
    numberColumn('Defrosts'),
    numberColumn('Missed'),
    numberColumn('Recovery'),
    numberColumn('Logged'),
  ];
  return html`<h2>Every circuit</h2>
${htmlTable('Every circuit', columns, rows)}
<p class="quiet">Settled air leaves out defrosts and the hour after them. A valve that is open nearly all the time has no reserve.</p>`;
}
