import { type Address, writeAddress } from '../address.ts';
import { CircuitPlot } from '../charts/circuit-plot.ts';
import { h } from '../dom.ts';
import type { Finding } from '../json.ts';
import { plotControls } from '../parts/plot-controls.ts';
import { plotLegend } from '../parts/plot-legend.ts';
import { trouble } from '../parts/trouble.ts';
import type { SiteResult } from '../server.ts';

export type PlottedAddress = Extract<Address, { page: 'circuit' | 'group' }>;

export interface PlotFigure {
  readonly element: HTMLElement;
  readonly plot: CircuitPlot;
}

/** The plot with its controls and legend, its range and view kept in the address. */
export function plotFigure(
  address: PlottedAddress,
  title: string,
  findings: readonly Finding[],
  { report }: SiteResult,
): PlotFigure {
  const told = address.page === 'circuit' ? ' The same numbers stand in the table below.' : '';
  const label = `Plot of ${title}.${told}`;
  const drawing = h('div', { class: 'plot', role: 'img', 'aria-label': label });
  const under = h('div', {});
  const shownSpan = h('p', { class: 'quiet span-text', 'aria-live': 'polite' });
  const plot = new CircuitPlot(drawing, address.range, address.view, {
    exportId: address.id,
    of: address.page,
    name: address.name,
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
  return {
    element: h('figure', { class: 'plot-figure' }, controls.element, shownSpan, drawing, under),
    plot,
  };
}
