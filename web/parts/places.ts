import { circuitAddress, groupAddress } from '../address.ts';
import { h, visible } from '../dom.ts';
import type { Finding, SiteReport } from '../json.ts';
import type { SiteResult } from '../server.ts';
import { causeParts, cautions, factList, firstSteps, lookAlikes, measured } from './finding.ts';
import { severityBadge } from './severity.ts';
import { pressureSparkline, sparkline } from './sparkline.ts';

type Place = SiteReport['places'][number];

function picture(place: Place, findings: readonly Finding[], report: SiteReport): HTMLElement | null {
  const onset = report.days.indexOf(findings[0]!.onset.slice(0, 10));
  const circuit = report.circuits.find(({ id }) => id === place.circuit);
  if (circuit === undefined) return pressurePicture(place, findings[0]!, report, onset);
  const marked = new Set(findings.flatMap(({ probe }) => (probe === null ? [] : [probe])));
  return sparkline(circuit, report.temperatureUnit, marked, onset);
}

/** The pressure that the finding on a rack names first. */
function pressurePicture(
  { suctionGroup }: Place,
  { points }: Finding,
  { pressures = [], pressureUnit = '' }: SiteReport,
  onset: number,
): HTMLElement | null {
  const own = pressures.filter((one) => one.suctionGroup === suctionGroup);
  const named = points.flatMap((point) => own.filter((one) => one.point === point));
  const pressure = named[0] ?? own[0];
  return pressure === undefined ? null : pressureSparkline(pressure, pressureUnit, onset);
}

function more(finding: Finding, report: SiteReport): HTMLElement {
  return h(
    'details',
    {},
    h('summary', {}, 'Causes, look-alikes and what was measured'),
    causeParts(finding, report, 'h4'),
    lookAlikes(finding, 'h4'),
    measured(finding),
  );
}

function placeAddress(exportId: string, { circuit, suctionGroup }: Place): string | null {
  if (circuit !== null) return circuitAddress(exportId, circuit);
  return suctionGroup === null ? null : groupAddress(exportId, suctionGroup);
}

function placeItem(
  exportId: string,
  place: Place,
  rank: number,
  { document: found, report }: SiteResult,
): HTMLElement {
  const findings = place.findings.map((id) => found.findings.find((finding) => finding.id === id)!);
  const [lead, ...others] = findings as [Finding, ...Finding[]];
  const title = visible(place.title);
  const [cause] = lead.causes;
  const address = placeAddress(exportId, place);
  return h(
    'li',
    { class: `place ${place.worst}` },
    h(
      'div',
      { class: 'place-head' },
      h('span', { class: 'rank' }, rank),
      h('h3', {}, address === null ? title : h('a', { href: address }, title)),
      severityBadge(place.worst, report.words),
      h('span', { class: 'kind quiet' }, report.words.kind[lead.kind] ?? lead.kind),
    ),
    h(
      'div',
      { class: 'place-body' },
      h(
        'div',
        {},
        h('p', { class: 'summary' }, visible(report.findings[lead.id]!.summary)),
        factList(exportId, lead, report),
      ),
      h('div', { class: 'steps' }, picture(place, findings, report), cause && firstSteps(cause, 'h4')),
    ),
    more(lead, report),
    others.map((finding) =>
      h(
        'div',
        { class: 'also' },
        h(
          'p',
          { class: 'summary' },
          severityBadge(finding.severity, report.words),
          ' ',
          visible(report.findings[finding.id]!.summary),
        ),
        factList(exportId, finding, report),
        more(finding, report),
      ),
    ),
    cautions(findings, report, true),
  );
}

/** The places with something to act on or to watch, worst first. */
export function placeList(exportId: string, result: SiteResult): HTMLElement | null {
  const { places } = result.report;
  if (places.length === 0) return null;
  return h(
    'section',
    { 'aria-labelledby': 'worst-first' },
    h('h2', { id: 'worst-first' }, 'Worst first'),
    h(
      'ol',
      { class: 'places' },
      places.map((place, index) => placeItem(exportId, place, index + 1, result)),
    ),
  );
}
