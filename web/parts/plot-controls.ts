import type { PlotView } from '../address.ts';
import type { CircuitPlot } from '../charts/circuit-plot.ts';
import { axisOfTimestamp, axisText, siteClock } from '../charts/site-clock.ts';
import { h } from '../dom.ts';
import type { CircuitSeries, Finding } from '../json.ts';

const day = 86_400_000;

export interface PlotControls {
  readonly element: HTMLElement;
  /** Says what the plot shows now. */
  update(series: CircuitSeries, settled: boolean, text: HTMLElement): void;
}

/** What the mouse does by dragging, as buttons: for the keyboard, for phones, and to find the finding. */
export function plotControls(plot: CircuitPlot, findings: readonly Finding[]): PlotControls {
  const button = (label: string, text: string, act: () => void): HTMLButtonElement =>
    h('button', { type: 'button', 'aria-label': label, title: label, onclick: act }, text);
  const lead = findings[0];
  const around = (): void => {
    const series = plot.shown;
    if (series === null || lead === undefined) return;
    const onset = siteClock(series.offsets).fromAxis(axisOfTimestamp(lead.onset));
    const from = Math.max(series.logSpan.from, onset - 1.5 * day);
    plot.show({ from, to: Math.min(series.logSpan.to, from + 3 * day) });
  };
  const views = h('select', {
    id: 'view',
    onchange: () => plot.show(plot.range, views.value as PlotView),
  });
  views.append(
    h('option', { value: 'auto' }, 'by the span'),
    h('option', { value: 'settled' }, 'settled air'),
    h('option', { value: 'all' }, 'every reading'),
  );
  views.value = plot.view;
  const whole = button('Show the whole span', 'Whole span', () => plot.show(null));
  const element = h(
    'div',
    { class: 'controls', role: 'group', 'aria-label': 'Plot' },
    button('Zoom in', '+', () => plot.zoom(0.5, 0)),
    button('Zoom out', '−', () => plot.zoom(2, 0)),
    button('Earlier', '‹', () => plot.zoom(1, -0.5)),
    button('Later', '›', () => plot.zoom(1, 0.5)),
    whole,
    lead !== undefined && button('Show the days around the onset', 'Around the onset', around),
    h('span', { class: 'choice' }, h('label', { for: 'view' }, 'Show '), views),
  );
  return {
    element,
    update: ({ probes, span, logSpan, offsets, timeZone }, settled, text) => {
      const hasAir = probes.length > 0;
      const { toAxis } = siteClock(offsets);
      whole.disabled = span.from <= logSpan.from && span.to >= logSpan.to;
      const calm = hasAir ? 'settled air: defrosts and recoveries left out' : 'mean, lowest and highest';
      const shown = settled ? calm : 'every reading, lowest and highest of each pixel';
      text.replaceChildren(
        `${axisText(toAxis(span.from))} to ${axisText(toAxis(span.to))}, ${timeZone}; ${shown}. `,
        h('span', { class: 'hint' }, 'Drag over the plot to zoom, double-click for the whole span.'),
      );
    },
  };
}
