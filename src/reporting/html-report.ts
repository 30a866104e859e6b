import type { Diagnosis } from '../model/finding.ts';
import type { ImportReport } from '../model/import-report.ts';
import type { Log } from '../model/log.ts';
import type { Signals } from '../signals/types.ts';
import { backgroundLines } from './background/background-lines.ts';
import { cautionsDefer, cautionsFor } from './cautions.ts';
import { headline, restsOn, siteTitle } from './headline.ts';
import { circuitTable } from './html/circuit-table.ts';
import { type Html, html } from './html/escape.ts';
import { severityMark } from './html/finding-section.ts';
import { htmlPage } from './html/page.ts';
import { anchorOf, placeSection } from './html/place-section.ts';
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

/** The report as one file that opens without a network. */
export function htmlReport({ log, report, signals, diagnosis }: Analysed): string {
  const order = reportOrder(diagnosis, log);
  const background = backgroundLines({ log, signals, diagnosis });
  return htmlPage({
    title: `${siteTitle(log, report)}: refrigeration findings`,
    kicker: 'Refrigeration findings',
    heading: siteTitle(log, report),
    under: restsOn(log),
    lead: headline(order, diagnosis, log),
    main: [
      rankedSection(order, log),
      order.places.length === 0 ? null : html`<h2>One by one</h2>`,
      ...order.places.map((place, index) =>
        placeSection(place, index, log, signals, background(place.findings[0]!)),
      ),
      notesSection(order, log),
      log.circuits.length === 0 ? null : html`<h2>Every circuit</h2>${circuitTable(log, signals, diagnosis)}`,
      questionsSection(diagnosis, log),
      importSection(report),
    ],
    footer: cautionsFor(diagnosis.findings).length === 0 ? null : html`<p>${cautionsDefer}</p>`,
  });
}

export function rankedSection({ places }: ReportOrder, log: Log): Html | null {
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

export function questionsSection(diagnosis: Diagnosis, log: Log): Html | null {
  const questions = openQuestions(diagnosis, log);
  if (questions.length === 0) return null;
  return html`<h2>What this export cannot tell</h2>
<ul class="plain">${questions.map(
    ({ reason, needs, places }) =>
      html`<li>${places.length === 0 ? null : html`<strong>${placesText(places)}.</strong> `}${reason}${needs === null ? null : html` <span class="quiet">What would allow it: ${needs}</span>`}</li>`,
  )}</ul>`;
}

export function importSection(report: ImportReport): Html {
  return html`<h2>What was read</h2>
${importLines(report).map(
  ({ heading, details }) =>
    html`<p>${heading}</p>${details.length === 0 ? null : html`<ul>${details.map((detail) => html`<li>${detail}</li>`)}</ul>`}`,
)}`;
}
