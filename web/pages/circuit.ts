import { type Address, circuitAddress, writeAddress } from '../address.ts';
import { CircuitPlot } from '../charts/circuit-plot.ts';
import { h, visible } from '../dom.ts';
import type { Finding } from '../json.ts';
import { dayTable } from '../parts/day-table.ts';
import { causeParts, cautions, factList, lookAlikes, measured } from '../parts/finding.ts';
import { plotControls } from '../parts/plot-controls.ts';
import { plotLegend } from '../parts/plot-legend.ts';
import { severityBadge } from '../parts/severity.ts';
import { siteName } from '../parts/site-name.ts';
import { trouble } from '../parts/trouble.ts';
import { Refusal, readResult, type SiteResult } from '../server.ts';
import type { Page } from './page.ts';

type CircuitAddress = Extract<Address, { page: 'circuit' }>;

const severityOrder = { act: 0, watch: 1, note: 2 } as const;

/** The circuit's own findings and those of its rack that stand for it, worst first. */
function findingsFor(circuit: string, { document: found }: SiteResult): readonly Finding[] {
  return found.findings
    .filter((finding) => finding.circuit === circuit || finding.covers.includes(circuit))
    .sort((a, b) => severityOrder[a.severity] - severityOrder[b.severity]);
}

function neighbours({ id, circuit }: CircuitAddress, { document: found }: SiteResult) {
  const order = found.circuits.map((each) => each.id);
  const place = order.indexOf(circuit);
  const link = (to: string | undefined): string | null => (to === undefined ? null : circuitAddress(id, to));
  return { place, count: order.length, previous: link(order[place - 1]), next: link(order[place + 1]) };
}

function findingSection(
  exportId: string,
  finding: Finding,
  said: boolean,
  { report }: SiteResult,
): HTMLElement {
  return h(
    'section',
    { class: `finding ${finding.severity}` },
    h(
      'h2',
      {},
      severityBadge(finding.severity, report.words),
      ' ',
      report.words.kind[finding.kind] ?? finding.kind,
    ),
    !said && h('p', { class: 'summary' }, visible(finding.summary)),
    h(
      'div',
      { class: 'columns' },
      h('div', {}, factList(exportId, finding, report), lookAlikes(finding, 'h3'), measured(finding)),
      causeParts(finding, report, 'h3'),
    ),
  );
}

/** One circuit: its plot with the findings marked where they stand, and what is known of each. */
export async function circuitPage(address: CircuitAddress): Promise<Page> {
  const result = await readResult(address.id);
  const { document: found, report } = result;
  const own = found.circuits.find(({ id }) => id === address.circuit);
  const days = report.circuits.find(({ id }) => id === address.circuit);
  if (own === undefined || days === undefined) {
    throw new Refusal({
      code: 'unknown-circuit',
      message: 'This site has no such circuit.',
      remedy: 'Choose one from the list of the site.',
    });
  }
  const findings = findingsFor(own.id, result);
  const { place, count, previous, next } = neighbours(address, result);
  const site = siteName(found.site);
  const title = visible(own.name === own.id || own.name === '' ? own.id : `${own.id} ${own.name}`);
  const element = h('div', {
    class: 'plot',
    role: 'img',
    'aria-label': `Plot of ${title}. The same numbers stand in the table below.`,
  });
  const under = h('div', {});
  const shownSpan = h('p', { class: 'quiet span-text', 'aria-live': 'polite' });
  const plot = new CircuitPlot(element, address.range, address.view, {
    exportId: address.id,
    circuit: own.id,
    findings,
    report,
    onChange: (range, view) => history.replaceState(null, '', writeAddress({ ...address, range, view })),
    onDrawn: (series, settled) => {
      under.replaceChildren(plotLegend(series, settled));
      controls.update(series, settled, shownSpan);
    },
    onFailure: (error) => under.replaceChildren(trouble(error)),
  });
  const controls = plotControls(plot, findings);

  const turn = (event: KeyboardEvent): void => {
    if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    if (event.target instanceof HTMLElement && event.target.closest('input, select, textarea, .scroll'))
      return;
    const to = event.key === 'ArrowLeft' ? previous : event.key === 'ArrowRight' ? next : null;
    if (to !== null) location.hash = to;
  };
  addEventListener('keydown', turn);

  const content = h(
    'div',
    { class: 'circuit' },
    h(
      'nav',
      { class: 'turn', 'aria-label': 'Circuits' },
      h('a', { href: writeAddress({ page: 'site', id: address.id }) }, site),
      h('span', { class: 'quiet' }, `rank ${place + 1} of ${count}`),
      previous === null ? null : h('a', { href: previous, rel: 'prev' }, '← Previous'),
      next === null ? null : h('a', { href: next, rel: 'next' }, 'Next →'),
      h('span', { class: 'quiet keys' }, 'arrow keys turn the pages'),
    ),
    h('h1', {}, title, own.worst !== null && [' ', severityBadge(own.worst, report.words)]),
    findings.length === 0
      ? h('p', { class: 'lead' }, 'Nothing was found on this circuit.')
      : h('p', { class: 'lead' }, visible(findings[0]!.summary)),
    h('figure', { class: 'plot-figure' }, controls.element, shownSpan, element, under),
    dayTable(days, report),
    findings.map((finding, index) => findingSection(address.id, finding, index === 0, result)),
    cautions(findings, report, false),
    h('p', { class: 'air' }, found.notice),
  );
  return {
    title: `${title} · ${site} · rimelog`,
    where: site,
    content,
    shown: () => void plot.load(),
    dispose: () => {
      removeEventListener('keydown', turn);
      plot.dispose();
    },
  };
}
