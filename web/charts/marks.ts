import type { Json } from 'plotly.js-dist-min';
import type { CircuitSeries, Finding, SiteReport } from '../json.ts';
import { faded, type PlotColors } from './colors.ts';
import { axisDayText, axisOfTimestamp, axisText, type SiteClock } from './site-clock.ts';

/** More shaded stretches than this cannot be told apart, and slow the drawing down. */
const mostShades = 400;

const onPanel = { xref: 'x', yref: 'paper', layer: 'below' } as const;

function shade(from: number, to: number, color: string, y: readonly [number, number]): Json {
  return {
    type: 'rect',
    ...onPanel,
    x0: from,
    x1: to,
    y0: y[0],
    y1: y[1],
    fillcolor: color,
    line: { width: 0 },
  };
}

/** Defrosts and stretches in which the circuit was off, behind the lines. */
export function shades(
  series: CircuitSeries,
  clock: SiteClock,
  colors: PlotColors,
  panel: readonly [number, number],
): Json[] {
  const stretch = (color: string) => (span: { from: number; to: number }) =>
    shade(clock.toAxis(span.from), clock.toAxis(span.to), color, panel);
  const defrosts = series.defrosts.length > mostShades ? [] : series.defrosts;
  return [...defrosts.map(stretch(colors.defrost)), ...series.off.map(stretch(faded(colors.quiet, 0.25)))];
}

export interface FindingMark {
  readonly shapes: readonly Json[];
  readonly annotations: readonly Json[];
}

export interface MarkContext {
  readonly findings: readonly Finding[];
  readonly report: SiteReport;
  readonly colors: PlotColors;
  /** First and last instant shown, in axis time. */
  readonly view: readonly [number, number];
  /** The panel that carries the marks, as shares of the drawing. */
  readonly panel: readonly [number, number];
  /** Of the panel, in pixels. */
  readonly width: number;
  readonly narrow: boolean;
}

const letterWidth = 7;

function onsetLabel({ severity }: Finding, onset: number, { report, narrow }: MarkContext): string {
  const { word, symbol } = report.words.severity[severity];
  return narrow ? `${symbol} since ${axisDayText(onset)}` : `${symbol} ${word} since ${axisText(onset)}`;
}

/** Where each finding stands: a line at its onset with its word and shape, the worst of them shaded over its span. */
export function findingMarks(context: MarkContext): FindingMark {
  const { findings, colors, view, panel, width } = context;
  const shapes: Json[] = [];
  const annotations: Json[] = [];
  for (const finding of findings) {
    const onset = axisOfTimestamp(finding.onset);
    const end = finding.end === null ? view[1] : axisOfTimestamp(finding.end);
    if (onset > view[1] || end < view[0]) continue;
    const color = colors[finding.severity];
    const from = Math.max(onset, view[0]);
    if (finding === findings[0] && finding.severity !== 'note') {
      shapes.push(shade(from, Math.min(end, view[1]), faded(color, 0.07), panel));
    }
    if (onset >= view[0]) {
      const line = { color, width: 1.5 };
      const ends = { x0: onset, x1: onset, y0: panel[0], y1: panel[1] };
      shapes.push({ type: 'line', xref: 'x', yref: 'paper', ...ends, line });
    }
    const text = onsetLabel(finding, onset, context);
    const room = ((view[1] - from) / (view[1] - view[0])) * width;
    annotations.push({
      xref: 'x',
      yref: 'paper',
      x: from,
      y: panel[1],
      yshift: -16 * annotations.length,
      xanchor: room < text.length * letterWidth ? 'right' : 'left',
      yanchor: 'top',
      text,
      showarrow: false,
      font: { color, size: 12 },
      bgcolor: faded(colors.paper, 0.85),
      borderpad: 2,
    });
  }
  return { shapes, annotations };
}
