import { readColors } from '../charts/colors.ts';
import { h, svg, visible } from '../dom.ts';
import type { CircuitSeries } from '../json.ts';

function swatch(...marks: SVGElement[]): SVGElement {
  return svg('svg', { viewBox: '0 0 34 12', width: 34, height: 12, 'aria-hidden': 'true' }, marks);
}

const line = (attributes: { readonly [name: string]: string }): SVGElement =>
  swatch(svg('line', { ...attributes, 'stroke-width': 2, x1: 0, x2: 34, y1: 6, y2: 6 }));
const dashed = (stroke: string, dash: string): SVGElement => {
  const pattern = dash === 'solid' ? 'none' : dash.replaceAll('px', '').replaceAll(',', ' ');
  return line({ stroke, 'stroke-dasharray': pattern });
};
const block = (name: string): SVGElement =>
  swatch(svg('rect', { class: `key ${name}`, width: 34, height: 12 }));

/** What each line and shade is, with its dash. */
export function plotLegend(series: CircuitSeries, settled: boolean): HTMLElement {
  const colors = readColors();
  const items: [SVGElement, string][] = series.probes.map(({ point }, index) => [
    dashed(colors.probe(index).color, colors.probe(index).dash),
    visible(point),
  ]);
  if (settled && series.probes.length > 0) items.push([block('band'), 'lowest to highest settled air']);
  if (series.suction !== null)
    items.push([dashed(colors.ink, 'solid'), settled ? 'suction, mean' : 'suction']);
  if (settled && series.suction !== null) items.push([block('range'), 'lowest to highest suction']);
  if (series.setPoint !== null || series.suction?.target)
    items.push([dashed(colors.setPoint, '1px,3px'), 'set point']);
  if (series.limit !== null) items.push([dashed(colors.act, '9px,5px'), 'alarm limit in force']);
  const source = series.defrosts[0]?.source;
  if (source !== undefined) {
    const told = { status: 'logged', schedule: 'from the schedule', shape: 'told by the temperatures' }[
      source
    ];
    items.push([block('defrost'), `defrost, ${told ?? source}`]);
  }
  if (series.off.length > 0) items.push([block('off'), 'shut off']);
  return h(
    'ul',
    { class: 'legend' },
    items.map(([mark, text]) => h('li', {}, mark, text)),
  );
}
