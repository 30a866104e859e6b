import { createHash } from 'node:crypto';
import type { Diagnosis } from '../model/finding.ts';
import type { ImportReport } from '../model/import-report.ts';
import type { Log } from '../model/log.ts';
import type { Signals } from '../signals/types.ts';
import { airNotFood } from './air-not-food.ts';
import { cautionsDefer, cautionsFor } from './cautions.ts';
import { headline, restsOn, siteTitle } from './headline.ts';
import { circuitTable } from './html/circuit-table.ts';
import { type Html, html, trusted } from './html/escape.ts';
import { severityMark } from './html/finding-section.ts';
import { anchorOf, placeSection } from './html/place-section.ts';
import { styleSheet } from './html/style.ts';
import { importLines } from './import-lines.ts';
import { dayText } from './local-time.ts';
import { openQuestions, placesText } from './open-questions.ts';
import { placeTitle, type ReportOrder, reportOrder, summaryUnder } from './report-order.ts';
import { severityWords } from './words.ts';

interface Analysed {
  readonly log: Log;
  readonly report: ImportReport;
  readonly signals: Signals;
  readonly diagnosis: Diagnosis;
}

/**
 * The report as one file: its style inside, its plots as SVG, no script, nothing fetched. The policy in its
 * head allows that one style sheet by its hash and nothing else.
 */
export function htmlReport({ log, report, signals, diagnosis }: Analysed): string {
  const order = reportOrder(diagnosis, log);
  const style = styleSheet();
  const hash = createHash('sha256').update(style).digest('base64');
  const policy = `default-src 'none'; style-src 'sha256-${hash}'; base-uri 'none'; form-action 'none'`;
  return html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${trusted(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${siteTitle(log, report)}: refrigeration findings</title>
<style>${trusted(style)}</style>
</head>
<body>
<div class="page">
<header>
<p class="kicker">Refrigeration findings</p>
<h1>${siteTitle(log, report)}</h1>
<p class="quiet">${restsOn(log)}</p>
<p class="lead">${headline(order, diagnosis, log)}</p>
<p class="air">${airNotFood}</p>
</header>
<main>
${rankedSection(order, log)}
${order.places.length === 0 ? null : html`<h2>One by one</h2>`}
${order.places.map((place, index) => placeSection(place, index, log, signals))}
${notesSection(order, log)}
<h2>Every circuit</h2>
${circuitTable(log, signals, diagnosis)}
${questionsSection(diagnosis, log)}
${importSection(report)}
</main>
${footer(diagnosis)}
</div>
</body>
</html>
`.toString();
}

function rankedSection({ places }: ReportOrder, log: Log): Html | null {
  if (places.length === 0) return null;
  const rows = places.map(
    ({ title, worst, findings }, index) =>
      html`<tr><td>${index + 1}</td><td>${severityMark(worst)}</td><td class="where"><a href="#${anchorOf(index)}">${title}</a></td><td>${summaryUnder(title, findings[0]!)}${findings.length > 1 ? html` <span class="quiet">And ${findings.length - 1} more.</span>` : null}</td><td class="when">since ${dayText(log, findings[0]!.onset)}</td></tr>
`,
  );
  return html`<h2>Worst first</h2>
<table class="ranked"><thead><tr><th scope="col">Rank</th><th scope="col">Severity</th><th scope="col">Where</th><th scope="col">What</th><th scope="col">Onset</th></tr></thead><tbody>${rows}</tbody></table>
<p class="quiet">${(['act', 'watch'] as const).map((severity) => `${severityWords[severity].symbol} ${severityWords[severity].word}: ${severityWords[severity].meaning}. `)}</p>`;
}

function notesSection({ notes }: ReportOrder, log: Log): Html | null {
  if (notes.length === 0) return null;
  return html`<h2>Notes, no visit needed</h2>
<ul class="plain">${notes.map((note) => html`<li><strong>${placeTitle(note, log)}.</strong> ${summaryUnder(placeTitle(note, log), note)}</li>`)}</ul>`;
}

function questionsSection(diagnosis: Diagnosis, log: Log): Html | null {
  const questions = openQuestions(diagnosis, log);
  if (questions.length === 0) return null;
  return html`<h2>What this export cannot tell</h2>
<ul class="plain">${questions.map(
    ({ reason, needs, places }) =>
      html`<li>${places.length === 0 ? null : html`<strong>${placesText(places)}.</strong> `}${reason}${needs === null ? null : html` <span class="quiet">What would allow it: ${needs}</span>`}</li>`,
  )}</ul>`;
}

function importSection(report: ImportReport): Html {
  return html`<h2>What was read</h2>
${importLines(report).map(
  ({ heading, details }) =>
    html`<p>${heading}</p>${details.length === 0 ? null : html`<ul>${details.map((detail) => html`<li>${detail}</li>`)}</ul>`}`,
)}`;
}

function footer(diagnosis: Diagnosis): Html {
  const cautions = cautionsFor(diagnosis.findings);
  return html`<footer>
${cautions.length === 0 ? null : html`<p>${cautionsDefer}</p>`}
<p>Made by rimelog from the export alone, on one machine; nothing was fetched or sent.</p>
</footer>`;
}
