import type { Log } from '../../model/log.ts';
import type { Signals } from '../../signals/types.ts';
import type { BackgroundLine } from '../background/background-lines.ts';
import { cautionsFor } from '../cautions.ts';
import { circuitCharts } from '../charts/circuit-charts.ts';
import { figure } from '../charts/figure.ts';
import { groupCharts } from '../charts/group-charts.ts';
import { type Place, summaryUnder } from '../report-order.ts';
import { dayTable } from './day-table.ts';
import { type Html, html } from './escape.ts';
import { findingDetails, severityMark } from './finding-section.ts';

export function anchorOf(index: number): string {
  return `place-${index + 1}`;
}

/** One circuit or suction group: the worst finding with its plots, then whatever else stands against it, then what it was held against. */
export function placeSection(
  place: Place,
  index: number,
  log: Log,
  signals: Signals,
  background: readonly BackgroundLine[] = [],
): Html {
  const [lead, ...others] = place.findings;
  return html`<article id="${anchorOf(index)}" aria-labelledby="${anchorOf(index)}-title">
<h3 id="${anchorOf(index)}-title"><span class="rank">${index + 1}</span> ${place.title} ${severityMark(place.worst)}</h3>
<p class="summary">${summaryUnder(place.title, lead!)}</p>
${charts(place, log, signals)}
${findingDetails(lead!, lead!, log)}
${others.map(
  (finding) =>
    html`<div class="also"><p class="summary">${severityMark(finding.severity)} ${summaryUnder(place.title, finding)}</p>${findingDetails(finding, lead!, log)}</div>`,
)}
${backgroundList(background)}
${careFor(place)}
${place.circuit === null ? null : dayTable(log, signals, place.circuit)}
</article>`;
}

function backgroundList(lines: readonly BackgroundLine[]): Html | null {
  if (lines.length === 0) return null;
  return html`<ul class="plain">${lines.map(({ about, text }) => html`<li><strong>${about}.</strong> ${text}</li>`)}</ul>`;
}

function charts({ circuit, suctionGroup, findings }: Place, log: Log, signals: Signals): readonly Html[] {
  const lead = findings[0]!;
  if (circuit !== null) return circuitCharts(log, signals, circuit, lead).map(figure);
  return suctionGroup === null ? [] : groupCharts(log, signals, suctionGroup, lead).map(figure);
}

function careFor({ findings }: Place): Html | null {
  const cautions = cautionsFor(findings);
  if (cautions.length === 0) return null;
  return html`<div class="care">${cautions.map(
    ({ hazard, advice }) => html`<p><strong>${hazard}.</strong> ${advice}</p>`,
  )}</div>`;
}
