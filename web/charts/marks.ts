import type { Json } from 'plotly.js-dist-min';
import type { CircuitSeries, Finding, SiteReport } from '../json.ts';
import { faded, type PlotColors } from './colors.ts';
import { axisOfTimestamp, axisText, type SiteClock } from './site-clock.ts';

/** More shaded stretches than this cannot be told apart, and slow the drawing down. */
const mostShades = 400;

const onAir = { xref: 'x', yref: 'paper', layer: 'below' } as const;

function shade(from: number, to: number, color: string, y: readonly [number, number]): Json {
  return {
    type: 'rect',
    ...onAir,
    x0: from,
    x1: to,
    y0: y[0],
    y1: y[1],
    fillcolor: color,
    line: { width: 0 },
  };
}

/** Defrosts and stretches in which the circuit was off, behind the air. */
export function shades(
  series: CircuitSeries,
  clock: SiteClock,
  colors: PlotColors,
  air: readonly [number, number],
): Json[] {
  const stretch = (color: string) => (span: { from: number; to: number }) =>
    shade(clock.toAxis(span.from), clock.toAxis(span.to), color, air);
  const defrosts = series.defrosts.length > mostShades ? [] : series.defrosts;
  return [...defrosts.map(stretch(colors.defrost)), ...series.off.map(stretch(faded(colors.quiet, 0.25)))];
}

export interface FindingMark {
  readonly shapes: readonly Json[];
  readonly annotations: readonly Json[];
}

/** Where each finding stands: a line at its onset with its word and shape, and a bar along the top over its span. */
export function findingMarks(
  findings: readonly Finding[],
  report: SiteReport,
  colors: PlotColors,
  view: readonly [number, number],
  air: readonly [number, number],
): FindingMark {
  const shapes: Json[] = [];
  const annotations: Json[] = [];
  findings.forEach((finding, index) => {
    const onset = axisOfTimestamp(finding.onset);
    const end = finding.end === null ? view[1] : axisOfTimestamp(finding.end);
    if (onset > view[1] || end < view[0]) return;
    const color = colors[finding.severity];
    const { word, symbol } = report.words.severity[finding.severity];
    const from = Math.max(onset, view[0]);
    shapes.push(shade(from, Math.min(end, view[1]), faded(color, 0.07), air));
    if (onset >= view[0]) {
      const line = { color, width: 1.5 };
      shapes.push({
        type: 'line',
        xref: 'x',
        yref: 'paper',
        x0: onset,
        x1: onset,
        y0: air[0],
        y1: air[1],
        line,
      });
    }
    const late = (from - view[0]) / (view[1] - view[0]) > 0.6;
    annotations.push({
      xref: 'x',
      yref: 'paper',
      x: from,
      y: 1,
      yshift: -16 * index,
      xanchor: late ? 'right' : 'left',
      yanchor: 'top',
      text: `${symbol} ${word} since ${axisText(onset)}`,
      showarrow: false,
      font: { color, size: 12 },
      bgcolor: faded(colors.paper, 0.85),
      borderpad: 2,
    });
  });
  return { shapes, annotations };
}
