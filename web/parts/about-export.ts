import { writeAddress } from '../address.ts';
import { h, visible } from '../dom.ts';
import type { ExportEntry, SiteReport } from '../json.ts';
import { allDays, monthName } from '../month-name.ts';
import { findingsAddress, reportPageAddress, siteFileAddress, visitAddress } from '../server.ts';
import { siteAgain } from './site-again.ts';

const shownPlaces = 6;

function placesText(places: readonly string[]): string {
  if (places.length <= shownPlaces) return places.join(', ');
  return `${places.slice(0, shownPlaces - 1).join(', ')} and ${places.length - shownPlaces + 1} more`;
}

function openQuestions({ openQuestions: questions, circuits }: SiteReport): HTMLElement {
  return h(
    'section',
    { 'aria-labelledby': 'open' },
    h('h2', { id: 'open' }, 'What cannot be judged'),
    questions.length === 0 &&
      h(
        'p',
        {},
        circuits.length === 0
          ? 'Nothing was judged: there is no circuit.'
          : 'Every analysis could judge every circuit.',
      ),
    h(
      'ul',
      { class: 'bare' },
      questions.map(({ reason, needs, places }) =>
        h(
          'li',
          {},
          visible(reason),
          places.length > 0 && h('span', { class: 'quiet' }, ` (${visible(placesText(places))})`),
          needs !== null && h('span', { class: 'needs' }, `Needed: ${visible(needs)}`),
        ),
      ),
    ),
  );
}

function guess(exportId: string): HTMLElement {
  return h(
    'section',
    { 'aria-labelledby': 'guess' },
    h('h2', { id: 'guess' }, 'The columns were guessed'),
    h(
      'p',
      {},
      'No site file came along, so circuits, probes and set points were told by their names, units and behaviour. Save the guess, correct it, and have the export analysed again with it.',
    ),
    h(
      'p',
      {},
      h(
        'a',
        { class: 'button', href: siteFileAddress(exportId), download: 'site.yaml' },
        'Save the guessed site file',
      ),
    ),
    siteAgain(exportId),
  );
}

/** Pages to take along, to print or to send; each opens in a window of its own. */
function workPages(exportId: string, { days, fullMonths = [] }: SiteReport): HTMLElement {
  const link = (href: string, text: string): HTMLElement =>
    h('p', {}, h('a', { href, target: '_blank', rel: 'noopener' }, text));
  const monthPage = (month: string): string => writeAddress({ page: 'month', id: exportId, month });
  return h(
    'section',
    { 'aria-labelledby': 'take' },
    h('h2', { id: 'take' }, 'To take along'),
    link(visitAddress(exportId), 'Visit sheet: one page, to print or read on a phone'),
    fullMonths.map((month) => link(monthPage(month), `The month of ${monthName(month)}: tables and plots`)),
    !days.every((day) => day.startsWith(fullMonths[0] ?? 'none')) &&
      link(monthPage(allDays), `${monthName(allDays)}: tables and plots`),
    h(
      'p',
      { class: 'quiet' },
      'Tables and plots are made when they are first opened, which can take as long as the analysis.',
    ),
  );
}

/** The work after a visit, and from one month to the next. */
function compareLinks(exportId: string): HTMLElement {
  const href = writeAddress({ page: 'compare', id: exportId, against: null });
  return h(
    'section',
    { 'aria-labelledby': 'compare' },
    h('h2', { id: 'compare' }, 'To compare'),
    h('p', {}, h('a', { href }, 'This export with another: what changed since')),
    h(
      'p',
      { class: 'quiet' },
      'Whether a repair held is asked on the page of its circuit, in an export that holds days before and after it.',
    ),
  );
}

/** A site file came along; it too can be corrected. */
function siteFileGiven(exportId: string): HTMLElement {
  return h('details', {}, h('summary', {}, 'Analyse again with another site file'), siteAgain(exportId));
}

function importReport({ import: files }: SiteReport): HTMLElement {
  return h(
    'section',
    { 'aria-labelledby': 'read' },
    h('h2', { id: 'read' }, 'How the export was read'),
    files.map(({ heading, details }) =>
      details.length === 0
        ? h('p', {}, visible(heading))
        : h(
            'details',
            {},
            h('summary', {}, visible(heading)),
            h(
              'ul',
              {},
              details.map((line) => h('li', {}, visible(line))),
            ),
          ),
    ),
  );
}

/** Beside the findings: what was not judged, what was guessed, how the files were read. */
export function aboutExport(exportId: string, entry: ExportEntry, report: SiteReport): HTMLElement {
  return h(
    'div',
    { class: 'about' },
    workPages(exportId, report),
    compareLinks(exportId),
    openQuestions(report),
    report.guessedSite && guess(exportId),
    importReport(report),
    !report.guessedSite && siteFileGiven(exportId),
    h(
      'section',
      { 'aria-labelledby': 'keep' },
      h('h2', { id: 'keep' }, 'To keep'),
      h(
        'p',
        {},
        h(
          'a',
          { href: reportPageAddress(exportId), download: 'rimelog-report.html' },
          'The report as one page, to mail or print',
        ),
      ),
      h(
        'p',
        {},
        h(
          'a',
          { href: findingsAddress(exportId), download: 'findings.json' },
          'The findings as JSON, for programs',
        ),
      ),
      h('p', { class: 'quiet' }, `Sent as ${visible(entry.files.map(({ name }) => name).join(', '))}.`),
    ),
  );
}
