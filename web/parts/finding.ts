import { circuitAddress } from '../address.ts';
import { h, visible } from '../dom.ts';
import type { Cause, Finding, SiteReport } from '../json.ts';

const percent = (share: number): string => `${Math.round(share * 100)} %`;

function circuitLinks(exportId: string, circuits: readonly string[]): (Node | string)[] {
  return circuits.flatMap((id, index) => [
    index === 0 ? '' : ', ',
    h('a', { href: circuitAddress(exportId, id) }, visible(id)),
  ]);
}

/** What it is, since when, how fast, how sure. */
export function factList(exportId: string, finding: Finding, report: SiteReport): HTMLElement {
  const { facts } = report.findings[finding.id]!;
  const rows: [string, string][] = [
    ['it is', report.words.origin[finding.origin] ?? finding.origin],
    ...facts.map(({ label, text }): [string, string] => [label, text]),
  ];
  const pointLabel = finding.circuit === null ? 'point' : 'probe';
  if (finding.probe !== null) rows.splice(1, 0, [pointLabel, visible(finding.probe)]);
  return h(
    'dl',
    {},
    rows.map(([label, text]) => [h('dt', {}, label), h('dd', {}, text)]),
    finding.covers.length > 0 && [h('dt', {}, 'covers'), h('dd', {}, circuitLinks(exportId, finding.covers))],
  );
}

/** The first checks of the likeliest cause, and what to bring. */
export function firstSteps({ checkFirst, bring }: Cause, heading: 'h3' | 'h4'): HTMLElement {
  return h(
    'div',
    {},
    checkFirst.length > 0 && [
      h(heading, {}, 'Check first'),
      h(
        'ol',
        {},
        checkFirst.map((check) => h('li', {}, check)),
      ),
    ],
    bring.length > 0 && h('p', {}, h('strong', {}, 'Bring: '), bring.join(', ')),
  );
}

export function causeParts(
  { causes, wouldDecide }: Finding,
  report: SiteReport,
  heading: 'h3' | 'h4',
): HTMLElement {
  const [first, ...others] = causes;
  const word = (cause: Cause['cause']): string => report.words.cause[cause];
  return h(
    'div',
    {},
    first && [
      h(
        'p',
        {},
        h('strong', {}, `Probably ${word(first.cause)}`),
        ` (${percent(first.likelihood)})${first.because === '' ? '' : `: ${first.because}`}`,
      ),
      firstSteps(first, heading),
    ],
    others.map((cause) =>
      h(
        'details',
        {},
        h('summary', {}, `Or else ${word(cause.cause)} (${percent(cause.likelihood)})`),
        cause.because !== '' && h('p', {}, cause.because),
        firstSteps(cause, heading),
      ),
    ),
    wouldDecide !== null && h('p', {}, h('strong', {}, 'What would decide it: '), wouldDecide),
  );
}

export function lookAlikes({ notThis }: Finding, heading: 'h3' | 'h4'): HTMLElement | null {
  if (notThis.length === 0) return null;
  return h(
    'div',
    {},
    h(heading, {}, 'Considered, and not this'),
    h(
      'ul',
      {},
      notThis.map((each) => h('li', {}, each)),
    ),
  );
}

function measureTitle(name: string): string {
  return name
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .replace(/[-_]/g, ' ')
    .toLowerCase();
}

export function measured({ evidence, points }: Finding): HTMLElement | null {
  if (evidence.length === 0) return null;
  return h(
    'details',
    {},
    h('summary', {}, 'What was measured'),
    h(
      'table',
      {},
      h(
        'thead',
        {},
        h(
          'tr',
          {},
          h('th', { scope: 'col' }, 'Measure'),
          h('th', { scope: 'col' }, 'Value, with its interval where known'),
        ),
      ),
      h(
        'tbody',
        {},
        evidence.map(({ name, display }) =>
          h('tr', {}, h('th', { scope: 'row' }, measureTitle(name)), h('td', {}, display)),
        ),
      ),
    ),
    points.length > 0 && h('p', { class: 'quiet' }, `It rests on ${visible(points.join(', '))}.`),
  );
}

/** The ways in which the work can hurt. In a list they are folded behind their names. */
export function cautions(
  findings: readonly Finding[],
  report: SiteReport,
  folded: boolean,
): HTMLElement | null {
  const byHazard = new Map<string, string>();
  for (const { id } of findings) {
    for (const { hazard, advice } of report.findings[id]!.cautions) byHazard.set(hazard, advice);
  }
  if (byHazard.size === 0) return null;
  const text = [
    [...byHazard].map(([hazard, advice]) => h('p', {}, h('strong', {}, `${hazard}. `), advice)),
    h('p', {}, report.cautionsDefer),
  ];
  if (!folded) return h('aside', { class: 'care', 'aria-label': 'Cautions' }, text);
  const names = [...byHazard.keys()].map((hazard) => hazard.toLowerCase()).join('; ');
  return h('details', { class: 'care' }, h('summary', {}, `Before reaching in, mind: ${names}`), text);
}
