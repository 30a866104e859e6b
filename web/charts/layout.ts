import type { Json } from 'plotly.js-dist-min';
import type { CircuitSeries, Finding, SiteReport } from '../json.ts';
import { airRange } from './air-range.ts';
import type { PlotColors } from './colors.ts';
import { endLabels } from './end-labels.ts';
import { findingMarks, shades } from './marks.ts';
import { type Panels, panelsFor } from './panels.ts';
import type { SiteClock } from './site-clock.ts';

export interface LayoutContext {
  readonly series: CircuitSeries;
  readonly clock: SiteClock;
  readonly colors: PlotColors;
  readonly findings: readonly Finding[];
  readonly report: SiteReport;
  readonly settled: boolean;
  /** Narrow pages have the names in the legend below, and drag scrolls the page. */
  readonly narrow: boolean;
}

const top = 10;
const bottom = 46;

export function panelsOf(series: CircuitSeries): Panels {
  return panelsFor(series.valve !== null, series.suction !== null);
}

function panelTitle(text: string, y: number, colors: PlotColors): Json {
  return {
    xref: 'paper',
    yref: 'paper',
    x: 0,
    y,
    xanchor: 'left',
    yanchor: 'bottom',
    yshift: 2,
    text,
    showarrow: false,
    font: { color: colors.quiet, size: 12 },
  };
}

function limitLine({ series, colors }: LayoutContext, range: readonly [number, number]): Json[] {
  if (series.limit === null || series.limit > range[1] || series.limit < range[0]) return [];
  const line = { color: colors.act, width: 1.2, dash: '9px,5px' };
  return [{ type: 'line', xref: 'paper', yref: 'y', x0: 0, x1: 1, y0: series.limit, y1: series.limit, line }];
}

/** The whole layout of a circuit's plot: three panels over one time axis, the marks and the names. */
export function layoutFor(context: LayoutContext): Json {
  const { series, clock, colors, findings, report, settled, narrow } = context;
  const panels = panelsOf(series);
  const view = [clock.toAxis(series.span.from), clock.toAxis(series.span.to)] as const;
  const range = airRange(series, settled) ?? [0, 1];
  const airPixels = (panels.air[1] - panels.air[0]) * panels.height;
  const marks = findingMarks(findings, report, colors, view, panels.air);
  const grid = { gridcolor: colors.rule, linecolor: colors.rule, zeroline: false, tickcolor: colors.rule };
  const axis = { ...grid, fixedrange: true, tickfont: { color: colors.quiet, size: 12 } };
  const annotations: Json[] = [...marks.annotations];
  if (!narrow) annotations.push(...endLabels(series, settled, colors, range, airPixels));
  if (panels.valve) annotations.push(panelTitle('Valve, share of the time open', panels.valve[1], colors));
  if (panels.suction) {
    annotations.push(panelTitle(`Suction pressure, ${series.pressureUnit}`, panels.suction[1], colors));
  }
  return {
    height: panels.height + top + bottom,
    margin: { l: 46, r: narrow ? 8 : 140, t: top, b: bottom, pad: 0 },
    paper_bgcolor: 'rgba(0,0,0,0)',
    plot_bgcolor: 'rgba(0,0,0,0)',
    font: { family: getComputedStyle(document.body).fontFamily, color: colors.ink, size: 12 },
    hovermode: 'x unified',
    hoverlabel: { bgcolor: colors.paper, bordercolor: colors.rule, font: { color: colors.ink, size: 12 } },
    dragmode: narrow ? false : 'zoom',
    showlegend: false,
    separators: '.,',
    xaxis: {
      ...axis,
      type: 'date',
      range: [...view],
      fixedrange: narrow,
      anchor: panels.suction ? 'y3' : panels.valve ? 'y2' : 'y',
      hoverformat: '%a %-d %b %H:%M',
      tickformatstops: [
        { dtickrange: [null, 43_200_000], value: '%H:%M\n%a %-d %b' },
        { dtickrange: [43_200_000, null], value: '%-d %b' },
      ],
      nticks: narrow ? 5 : 12,
    },
    yaxis: { ...axis, domain: [...panels.air], range: [...range], ticksuffix: '', title: { text: '' } },
    ...(panels.valve
      ? {
          yaxis2: {
            ...axis,
            domain: [...panels.valve],
            range: [0, 1.02],
            tickvals: [0, 1],
            tickformat: '.0%',
          },
        }
      : {}),
    ...(panels.suction ? { yaxis3: { ...axis, domain: [...panels.suction], nticks: 4 } } : {}),
    shapes: [...shades(series, clock, colors, panels.air), ...limitLine(context, range), ...marks.shapes],
    annotations,
  };
}
