import { monthSentence } from '../../audit/month.ts';
import type { MonthAudit } from '../../audit/month-audit.ts';
import type { ImportReport } from '../../model/import-report.ts';
import { cautionsDefer } from '../cautions.ts';
import { headline, siteTitle } from '../headline.ts';
import { html } from '../html/escape.ts';
import { htmlPage } from '../html/page.ts';
import { placeSection } from '../html/place-section.ts';
import { importSection, questionsSection, rankedSection } from '../html-report.ts';
import { reportOrder } from '../report-order.ts';
import { alarmsSection } from './alarms-section.ts';
import { changesSection } from './changes-section.ts';
import { circuitsSection } from './circuits-section.ts';
import { coverageSection } from './coverage-section.ts';
import { energyLines } from './energy-lines.ts';
import { exposureSection } from './exposure-section.ts';
import { normsSection } from './norms-section.ts';
import { racksSection } from './racks-section.ts';

/** The month, or all days of the export, as one file to print or send. */
export function auditReport(audit: MonthAudit, report: ImportReport): string {
  const { log, signals, diagnosis, month } = audit.scope;
  const order = reportOrder(diagnosis, log);
  const energy = energyLines(audit);
  return htmlPage({
    title: `${siteTitle(log, report)}: ${month.name === null ? 'all days' : 'the month'}`,
    kicker: month.name === null ? 'All days of the export' : 'The month in refrigeration',
    heading: siteTitle(log, report),
    under: monthSentence(log, month),
    lead: headline(order, diagnosis, log),
    main: [
      rankedSection(order, log),
      circuitsSection(audit),
      exposureSection(audit),
      racksSection(audit),
      changesSection(audit),
      alarmsSection(audit),
      normsSection(audit),
      energy.length === 0
        ? null
        : html`<h2>Energy, as rules of thumb</h2><ul class="plain">${energy.map((line) => html`<li>${line}</li>`)}</ul>`,
      order.places.length === 0 ? null : html`<h2>Findings, one by one</h2>`,
      ...order.places.map((place, index) => placeSection(place, index, log, signals)),
      coverageSection(audit),
      questionsSection(diagnosis, log),
      importSection(report),
    ],
    footer: html`<p>${cautionsDefer}</p>
<p>What each number is and how it was computed: docs/reference/tables.md; rimelog audit --tables writes all of them as CSV.</p>`,
  });
}
