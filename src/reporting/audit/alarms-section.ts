import { alarmView } from '../../audit/alarm-view.ts';
import type { MonthAudit } from '../../audit/month-audit.ts';
import { formatMinutes } from '../../units/display.ts';
import { formatNumber } from '../../units/format-number.ts';
import { type Html, html } from '../html/escape.ts';
import { htmlTable, numberColumn, wordColumn } from '../html/table.ts';
import { siteScale } from '../site-scale.ts';
import { alarmLines } from './alarm-lines.ts';

/** What the alarms would have said about each finding, and a limit for each probe from its own quiet days. */
export function alarmsSection(audit: MonthAudit): Html {
  const lines = alarmLines(audit.scope);
  return html`<h2>What the alarms would have said</h2>
${
  lines.length === 0
    ? html`<p>No finding of a warm circuit and no trip of the alarms in force: nothing to compare.</p>`
    : html`<ul class="plain">${lines.map((line) => html`<li>${line}</li>`)}</ul>`
}
${suggestedTable(audit)}`;
}

function suggestedTable({ scope }: MonthAudit): Html | null {
  const { temperature, temperatureSign: sign } = siteScale(scope.log);
  const rows = alarmView(scope).flatMap(({ circuit, alarms }) =>
    alarms.flatMap(({ suggestion }) => {
      if (suggestion === null) return [];
      const { point, limit, quietDays, nuisanceDays, aMonth } = suggestion;
      const rate = `${formatNumber(aMonth.expected, 1)} (up to ${formatNumber(aMonth.high, 1)})`;
      return [
        [
          point,
          circuit.circuit.id,
          formatNumber(temperature(limit), 1),
          `${nuisanceDays} of ${quietDays}`,
          rate,
        ],
      ];
    }),
  );
  if (rows.length === 0) return null;
  const delay = formatMinutes(30);
  return html`<details><summary>A limit for each probe from its own quiet days</summary>
<p>Each on one probe, for ${delay} outside a defrost and the ${delay} after it.</p>
${htmlTable(
  'Suggested limits',
  [
    wordColumn('Probe'),
    wordColumn('Circuit'),
    numberColumn(`Limit, ${sign}`),
    numberColumn('Quiet days on which it would have come'),
    numberColumn('Nuisance days to expect a month'),
  ],
  rows,
)}</details>`;
}
