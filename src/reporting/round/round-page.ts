import { cautionsDefer } from '../cautions.ts';
import { type Html, html } from '../html/escape.ts';
import { severityMark } from '../html/finding-section.ts';
import { htmlPage } from '../html/page.ts';
import type { RoundDocument, RoundStop } from './round-document.ts';
import { newsOf, quietStores, stopFacts, unknownStores } from './round-words.ts';

const style = `
.stop{border-top:1px solid var(--rule);padding:10px 0 8px;break-inside:avoid}
.stop h3{font-size:1.05rem;margin:0 0 4px;display:flex;gap:10px;align-items:baseline;flex-wrap:wrap}
.stop p{margin:0 0 4px}
.stop dl{display:grid;grid-template-columns:6em minmax(0,1fr);gap:1px 10px;margin:0;font-size:.95rem}
.stop dt{color:var(--quiet)}.stop dd{margin:0}
.tight{margin:0;padding-left:1.2em}.tight li{margin:2px 0}
`;

/** @param reports relative address of the report of a store, by its source; a store without one is not linked */
export function roundPage(round: RoundDocument, reports: ReadonlyMap<string, string>): string {
  return htmlPage({
    title: 'The round',
    kicker: 'Many stores, worst first',
    heading: 'The round',
    under: `${round.stores.length + round.unreadable.length} stores`,
    lead: round.summary,
    style,
    main: [
      ...round.stops.map((stop, index) => stopSection(stop, index, reports.get(stop.source))),
      list('As of', newsOf(round)),
      list('Nothing above a note', quietStores(round)),
      list('Of these nothing is known', unknownStores(round)),
      html`<h2>How it is ordered</h2><p>${round.method}</p>`,
    ],
    footer: html`<p>${cautionsDefer}</p>`,
  });
}

function stopSection(stop: RoundStop, index: number, address: string | undefined): Html {
  const title = `${stop.store}: ${stop.place}`;
  return html`<section class="stop"><h3><span><span class="rank">${index + 1}</span> ${address === undefined ? title : html`<a href="${address}">${title}</a>`}</span> ${severityMark(stop.severity)}</h3>
<p>${stop.summary}</p>
<dl>${stopFacts(stop).map(({ label, text }) => html`<dt>${label}</dt><dd>${text}</dd>`)}</dl></section>
`;
}

function list(title: string, lines: readonly string[]): Html | null {
  if (lines.length === 0) return null;
  return html`<h2>${title}</h2><ul class="tight">${lines.map((line) => html`<li>${line}</li>`)}</ul>`;
}
