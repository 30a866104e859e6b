import type { Html } from '../html/escape.ts';
import { html, trusted } from '../html/escape.ts';
import type { ReducedSeries } from '../reduce-series.ts';
import {
  type Chart,
  type LinesPanel,
  type MarksPanel,
  type Panel,
  type SharePanel,
  slotName,
} from './chart.ts';
import { bandPath, linePath } from './path.ts';
import { linearScale, type Scale } from './scale.ts';

/** Width of the drawing in its own units; it is stretched to the page, while its lines and texts are not. */
export const drawingWidth = 1000;

const shortest = 0.8;

function block(from: number, to: number, x: Scale, height: number, name: string): Html {
  const left = Math.max(0, x(from));
  const width = Math.max(shortest, Math.min(drawingWidth, x(to)) - left);
  return html`<rect class="${name}" x="${left.toFixed(1)}" y="0" width="${width.toFixed(1)}" height="${height}"/>`;
}

function backdrop(chart: Chart, x: Scale, height: number): readonly Html[] {
  const { highlight } = chart;
  const uprights = chart.ticks.map(({ time }) => `M${x(time).toFixed(1)} 0v${height}`).join('');
  return [
    ...(highlight === null
      ? []
      : [block(highlight.from, highlight.to, x, height, `span ${highlight.severity}`)]),
    ...chart.shades.map(({ kind, from, to }) => block(from, to, x, height, kind)),
    html`<path class="grid" d="${trusted(uprights)}"/>`,
    ...(highlight === null || highlight.label === null
      ? []
      : [html`<path class="onset ${highlight.severity}" d="M${x(highlight.from).toFixed(1)} 0v${height}"/>`]),
  ];
}

function drawLines(panel: LinesPanel, x: Scale): readonly Html[] {
  const y = linearScale(panel.domain, panel.height, 0);
  return [
    ...panel.lines.map(({ band, slot }) =>
      band === null
        ? null
        : html`<path class="band ${slotName(slot)}" d="${trusted(bandPath(band.times, band.low, band.high, x, y))}"/>`,
    ),
    ...panel.levels.map(
      ({ kind, line }) => html`<path class="level ${kind}" d="${trusted(linePath(line, x, y))}"/>`,
    ),
    ...[...panel.lines]
      .sort((a, b) => Number(a.strong) - Number(b.strong))
      .map(
        ({ line, slot, strong }) =>
          html`<path class="line ${slotName(slot)}${strong ? ' strong' : ''}" d="${trusted(linePath(line, x, y))}"/>`,
      ),
  ].filter((part) => part !== null);
}

function drawShare({ line, height }: SharePanel, x: Scale): readonly Html[] {
  const y = linearScale({ low: 0, high: 1 }, height, 1);
  const { times, values } = stepped(line);
  const floor = values.map((value) => (value === null ? null : 0));
  return [html`<path class="share" d="${trusted(bandPath(times, floor, values, x, y))}"/>`];
}

/** Each value held half way to its neighbours, as a share of a column is. */
function stepped({ times, values }: ReducedSeries): ReducedSeries {
  const half = times.length > 1 ? (times[1]! - times[0]!) / 2 : 0;
  return {
    times: times.flatMap((time) => [time - half, time + half]),
    values: values.flatMap((value) => [value, value]),
  };
}

function drawMarks({ spans, height }: MarksPanel, x: Scale): readonly Html[] {
  return spans.map(({ from, to }) => block(from, to, x, height, 'mark'));
}

function drawContent(panel: Panel, x: Scale): readonly Html[] {
  if (panel.kind === 'lines') return drawLines(panel, x);
  return panel.kind === 'share' ? drawShare(panel, x) : drawMarks(panel, x);
}

/** The stretched part of one panel. */
export function panelDrawing(chart: Chart, panel: Panel): Html {
  const x = linearScale({ low: chart.from, high: chart.to }, 0, drawingWidth);
  return html`<svg viewBox="0 0 ${drawingWidth} ${panel.height}" width="100%" height="${panel.height}" preserveAspectRatio="none">${backdrop(chart, x, panel.height)}${drawContent(panel, x)}</svg>`;
}
