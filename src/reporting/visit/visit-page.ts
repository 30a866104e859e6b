import type { Log } from '../../model/log.ts';
import type { Stop, VisitSheet } from '../../visit/visit-sheet.ts';
import { cautionsDefer, cautionsFor } from '../cautions.ts';
import { restsOn, siteTitle } from '../headline.ts';
import { type Html, html } from '../html/escape.ts';
import { severityMark } from '../html/finding-section.ts';
import { htmlPage } from '../html/page.ts';
import { cannotTell } from './visit-terminal.ts';
import {
  causeText,
  exposureText,
  questionText,
  type SheetSource,
  stopFacts,
  stopSummary,
  stopTitle,
  visitHeadline,
} from './visit-words.ts';

/** So many stops are written out; with more of them the sheet would not be one any longer. */
const mostStops = 5;
const mostOtherFindings = 1;

const style = `
.sheet h2{margin:22px 0 6px;font-size:1.1rem}
.stop{display:grid;grid-template-columns:minmax(0,6fr) minmax(0,5fr);gap:2px 28px;border-top:1px solid var(--rule);padding:9px 0;break-inside:avoid}
.stop h3{grid-column:1/-1;font-size:1.05rem;margin:0;display:flex;gap:10px;align-items:baseline;flex-wrap:wrap}
.stop p{margin:0 0 3px}.stop ol{margin:0 0 3px}.stop li{margin:0}
.now{font-weight:600}
.tight{margin:0;padding-left:1.2em}.tight li{margin:2px 0}
@media (max-width:700px){.stop{grid-template-columns:minmax(0,1fr)}}
@media print{
@page{margin:8mm 10mm}
html,body{font-size:7.8pt;line-height:1.23}
h1{font-size:13pt;margin:0 0 1px}.kicker{display:none}.lead{font-size:10pt;margin:3px 0}
header{padding-bottom:3px}header p{margin:0;max-width:none}.air{font-size:7.2pt}
.badge{font-size:6.4pt;line-height:1.3;border-width:1px;padding:0 4px}
.sheet h2{margin:6px 0 1px;font-size:9.4pt}.stop{padding:3px 0;grid-template-columns:minmax(0,1fr) minmax(0,1.15fr)}
.stop h3{font-size:9pt}
.stop p,.stop li,.tight li,.sheet p{max-width:none;margin:0}
footer{margin-top:5px;padding-top:2px;font-size:7.2pt}footer p{margin:0}
}
`;

/** The sheet as one page: on paper one sheet, on a phone one column. */
export function visitPage(sheet: VisitSheet, { log, report, diagnosis }: SheetSource): string {
  const title = siteTitle(log, report);
  const shown = sheet.stops.slice(0, mostStops);
  const rest = sheet.stops.slice(mostStops);
  return htmlPage({
    title: `${title}: visit`,
    kicker: 'Before driving out',
    heading: title,
    under: restsOn(log),
    lead: visitHeadline(sheet, { log, diagnosis }),
    style,
    main: html`<div class="sheet">
${list(
  'By phone first',
  sheet.phoneFirst.map((question) => questionText(question, log)),
)}
${shown.length === 0 ? null : html`<h2>Stops, worst first</h2>`}
${shown.map((stop, index) => stopSection(stop, index, log))}
${rest.length === 0 ? null : html`<p>Then: ${rest.map((stop) => stopTitle(stop, log)).join('; ')}.</p>`}
${list('What this export cannot tell', cannotTell(diagnosis, log))}
${care(sheet)}
</div>`,
    footer: null,
  });
}

function list(title: string, lines: readonly string[]): Html | null {
  if (lines.length === 0) return null;
  return html`<h2>${title}</h2><ul class="tight">${lines.map((line) => html`<li>${line}</li>`)}</ul>`;
}

function stopSection(stop: Stop, index: number, log: Log): Html {
  const now = exposureText(stop, log);
  const cause = causeText(stop);
  const { checkFirst = [], bring = [] } = stop.cause ?? {};
  const others = stop.others.slice(0, mostOtherFindings);
  return html`<section class="stop"><h3><span class="rank">${index + 1}</span> ${stopTitle(stop, log)} ${severityMark(stop.severity)}</h3>
<div><p>${stopSummary(stop, log)}</p><p class="quiet">${stopFacts(stop, log)}</p>${now === null ? null : html`<p class="now">${now}</p>`}${others.map(({ summary }) => html`<p class="quiet">Also: ${summary}</p>`)}</div>
<div>${cause === null ? null : html`<p><span class="cause">Probably ${cause}</span></p>`}<ol>${checkFirst.slice(0, 3).map((check) => html`<li>${check}</li>`)}</ol>${bring.length === 0 ? null : html`<p><span class="cause">Bring:</span> ${bring.join(', ')}</p>`}</div></section>`;
}

function care({ findings }: VisitSheet): Html | null {
  const cautions = cautionsFor(findings);
  if (cautions.length === 0) return null;
  return html`<h2>Take care</h2><ul class="tight"><li>${cautionsDefer}</li>${cautions.map(
    ({ hazard, advice }) => html`<li><strong>${hazard}.</strong> ${advice}</li>`,
  )}</ul>`;
}
