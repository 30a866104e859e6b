import { circuitAddress, groupAddress, writeAddress } from '../address.ts';
import { h, visible } from '../dom.ts';
import type { Finding } from '../json.ts';
import { backgroundSections } from '../parts/background.ts';
import { dayTable } from '../parts/day-table.ts';
import { cautions } from '../parts/finding.ts';
import { findingSection } from '../parts/finding-section.ts';
import { severityBadge } from '../parts/severity.ts';
import { Refusal, readBackground, readResult, type SiteResult } from '../server.ts';
import type { Page } from './page.ts';
import { type PlottedAddress, plotFigure } from './plotted.ts';

const severityOrder = { act: 0, watch: 1, note: 2 } as const;

/** The circuit's own findings and those of its rack that stand for it, worst first. */
function findingsFor(circuit: string, { document: found }: SiteResult): readonly Finding[] {
  return found.findings
    .filter((finding) => finding.circuit === circuit || finding.covers.includes(circuit))
    .sort((a, b) => severityOrder[a.severity] - severityOrder[b.severity]);
}

function neighbours({ id, name }: PlottedAddress, { document: found }: SiteResult) {
  const order = found.circuits.map((each) => each.id);
  const place = order.indexOf(name);
  const link = (to: string | undefined): string | null => (to === undefined ? null : circuitAddress(id, to));
  return { place, count: order.length, previous: link(order[place - 1]), next: link(order[place + 1]) };
}

/** Turns the pages by the arrow keys, but not while they are wanted elsewhere. */
function pageTurner(previous: string | null, next: string | null): (event: KeyboardEvent) => void {
  return (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    if (event.target instanceof HTMLElement && event.target.closest('input, select, textarea, .scroll'))
      return;
    const to = event.key === 'ArrowLeft' ? previous : event.key === 'ArrowRight' ? next : null;
    if (to !== null) location.hash = to;
  };
}

function turnLinks(address: PlottedAddress, site: string, result: SiteResult): HTMLElement {
  const { place, count, previous, next } = neighbours(address, result);
  const group = result.report.circuits.find(({ id }) => id === address.name)?.suctionGroup ?? null;
  return h(
    'nav',
    { class: 'turn', 'aria-label': 'Circuits' },
    h('a', { href: writeAddress({ page: 'site', id: address.id }) }, site),
    h('span', { class: 'quiet' }, `rank ${place + 1} of ${count}`),
    group !== null && h('a', { href: groupAddress(address.id, group) }, visible(`Suction group ${group}`)),
    h(
      'a',
      { href: writeAddress({ page: 'repair', id: address.id, name: address.name, serviced: null }) },
      'Did a repair hold?',
    ),
    previous !== null && h('a', { href: previous, rel: 'prev' }, '← Previous'),
    next !== null && h('a', { href: next, rel: 'next' }, 'Next →'),
    h('span', { class: 'quiet keys' }, 'arrow keys turn the pages'),
  );
}

/** The worst finding in its sentence; under the circuit's own name it need not say the name again. */
function leadText([worst]: readonly Finding[], circuit: string, { report }: SiteResult): string {
  if (worst === undefined) return 'Nothing was found on this circuit.';
  return visible(worst.circuit === circuit ? report.findings[worst.id]!.summary : worst.summary);
}

/** One circuit: its plot with the findings marked where they stand, and what is known of each. */
export async function circuitPage(address: PlottedAddress): Promise<Page> {
  const result = await readResult(address.id);
  const { document: found, report } = result;
  const own = found.circuits.find(({ id }) => id === address.name);
  const days = report.circuits.find(({ id }) => id === address.name);
  if (own === undefined || days === undefined) {
    throw new Refusal({
      code: 'unknown-circuit',
      message: 'This site has no such circuit.',
      remedy: 'Choose one from the list of the site.',
    });
  }
  const background = await readBackground(address.id, own.id);
  const site = visible(report.title);
  const title = visible(own.name === own.id || own.name === '' ? own.id : `${own.id} ${own.name}`);
  const findings = findingsFor(own.id, result);
  const { element, plot } = plotFigure(address, title, findings, result);
  const { previous, next } = neighbours(address, result);
  const turn = pageTurner(previous, next);
  addEventListener('keydown', turn);
  const content = h(
    'div',
    { class: 'circuit' },
    turnLinks(address, site, result),
    h('h1', {}, title, own.worst !== null && [' ', severityBadge(own.worst, report.words)]),
    h('p', { class: 'lead' }, leadText(findings, own.id, result)),
    element,
    dayTable(days, report),
    findings.map((finding, index) => findingSection(address.id, finding, index === 0, result)),
    background !== null && backgroundSections(background),
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
