import { circuitAddress, writeAddress } from '../address.ts';
import { h, visible } from '../dom.ts';
import type { CircuitDays, Finding } from '../json.ts';
import { cautions } from '../parts/finding.ts';
import { findingSection } from '../parts/finding-section.ts';
import { sparkline } from '../parts/sparkline.ts';
import { Refusal, readResult, type SiteResult } from '../server.ts';
import type { Page } from './page.ts';
import { type PlottedAddress, plotFigure } from './plotted.ts';

/** The circuits of the group under one another: a rack fault warms them together. */
function membersTogether(
  exportId: string,
  members: readonly CircuitDays[],
  lead: Finding | undefined,
  { report }: SiteResult,
): HTMLElement {
  const onset = lead === undefined ? -1 : report.days.indexOf(lead.onset.slice(0, 10));
  return h(
    'section',
    { 'aria-labelledby': 'together' },
    h('h2', { id: 'together' }, 'Its circuits, over the same days'),
    h(
      'ul',
      { class: 'members' },
      members.map((circuit) =>
        h(
          'li',
          {},
          h('a', { href: circuitAddress(exportId, circuit.id) }, visible(`${circuit.id} ${circuit.name}`)),
          sparkline(circuit, report.temperatureUnit, new Set(), onset),
        ),
      ),
    ),
  );
}

function leadText([worst]: readonly Finding[], { findings }: SiteResult['report']): string {
  return worst === undefined
    ? 'Nothing was found on this suction group.'
    : visible(findings[worst.id]!.summary);
}

/** One suction group: its pressure against the set point, its machines, and what its circuits did meanwhile. */
export async function groupPage(address: PlottedAddress): Promise<Page> {
  const result = await readResult(address.id);
  const { document: found, report } = result;
  const findings = found.findings.filter(
    ({ suctionGroup, circuit }) => suctionGroup === address.name && circuit === null,
  );
  const members = report.circuits.filter(({ suctionGroup }) => suctionGroup === address.name);
  if (findings.length + members.length === 0) {
    throw new Refusal({
      code: 'unknown-group',
      message: 'This site has no such suction group.',
      remedy: 'Choose one from the list of the site.',
    });
  }
  const site = visible(report.title);
  const title = visible(`Suction group ${address.name}`);
  const { element, plot } = plotFigure(address, title, findings, result);
  const content = h(
    'div',
    { class: 'circuit' },
    h(
      'nav',
      { class: 'turn', 'aria-label': 'Site' },
      h('a', { href: writeAddress({ page: 'site', id: address.id }) }, site),
    ),
    h('h1', {}, title),
    h('p', { class: 'lead' }, leadText(findings, report)),
    element,
    membersTogether(address.id, members, findings[0], result),
    findings.map((finding, index) => findingSection(address.id, finding, index === 0, result)),
    cautions(findings, report, false),
    h('p', { class: 'air' }, found.notice),
  );
  return {
    title: `${title} · ${site} · rimelog`,
    where: site,
    content,
    shown: () => void plot.load(),
    dispose: () => plot.dispose(),
  };
}
