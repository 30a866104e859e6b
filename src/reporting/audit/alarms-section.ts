import { alarmView, type CircuitAlarms, type FindingLead } from '../../audit/alarm-view.ts';
import type { MonthAudit } from '../../audit/month-audit.ts';
import type { MonthScope } from '../../audit/scope.ts';
import { toldOn } from '../../audit/told-on.ts';
import { formatMinutes } from '../../units/display.ts';
import { formatNumber } from '../../units/format-number.ts';
import { type Html, html } from '../html/escape.ts';
import { htmlTable, numberColumn, wordColumn } from '../html/table.ts';
import { circuitTitle } from '../report-order.ts';
import { siteScale } from '../site-scale.ts';
import {
  alarmTitle,
  findingTitle,
  hiddenText,
  hindsight,
  leadFromTold,
  leadText,
  nothingToReplay,
  strayTrips,
  toldText,
} from './alarm-lines.ts';

/** What the alarms would have said about each finding, and a limit for each probe from its own quiet days. */
export function alarmsSection(audit: MonthAudit): Html {
  const { scope } = audit;
  const view = alarmView(scope);
  const findings = view.flatMap((circuit) =>
    circuit.findings.map((lead) => findingPart(circuit, lead, scope)),
  );
  const stray = view.flatMap((circuit) => strayTrips(circuit, scope));
  return html`<h2>What the alarms would have said</h2>
${
  findings.length + stray.length === 0
    ? html`<p>No finding of a warm circuit and no trip of the alarms in force: nothing to compare.</p>`
    : findings
}
${stray.length === 0 ? null : html`<ul class="plain">${stray.map((line) => html`<li>${line}</li>`)}</ul>`}
${findings.length === 0 ? null : html`<p class="quiet">${hindsight}</p>`}
${suggestedTable(audit)}`;
}

function findingPart({ circuit, alarms }: CircuitAlarms, lead: FindingLead, scope: MonthScope): Html {
  const { log } = scope;
  const told = toldOn(lead.finding, scope);
  const title = findingTitle(lead, log);
  const heading = html`<h3>${circuitTitle(log, circuit.circuit.id)}: ${title}</h3>`;
  if (alarms.length === 0) return html`${heading}<p>${sentence(nothingToReplay)}</p>`;
  const rows = lead.leads.map(({ alarm, lead: each }) => [
    sentence(alarmTitle(alarm, log)),
    sentence(leadText(each, log)),
    sentence(leadFromTold(each, told)) || '–',
    formatMinutes(alarm.history.blindMinutesADay),
  ]);
  return html`${heading}
<p>The finding ${toldText(told, lead.finding, log)}.</p>
${htmlTable(
  `Alarms and ${title}`,
  [
    wordColumn('Alarm'),
    wordColumn('It'),
    wordColumn('Against the day it could be told'),
    numberColumn('Blind a day'),
  ],
  rows,
)}
${lead.hidden === null ? null : html`<p>${hiddenText(lead.hidden, log)}</p>`}`;
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

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
