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
  /** Of the drawing, in pixels. */
  readonly width: number;
  /** Narrow pages have the names in the legend below, and drag scrolls the page. */
  readonly narrow: boolean;
}

const left = 46;
const top = 24;
const bottom = 46;

/** The title of a panel, over its left end. */
function panelTitle(text: string, panel: readonly [number, number] | null, colors: PlotColors): Json[] {
  if (panel === null) return [];
  const place = {
    xref: 'paper',
    yref: 'paper',
    x: 0,
    y: panel[1],
    xanchor: 'left',
    yanchor: 'bottom',
    yshift: 2,
  };
  return [{ ...place, text, showarrow: false, font: { color: colors.quiet, size: 12 } }];
}

function panelTitles({ series, colors }: LayoutContext, panels: Panels): Json[] {
  const strip = panels.air === null ? 'Machines, share running' : 'Valve, share of the time open';
  return [
    ...panelTitle(`Air, ${series.temperatureUnit}`, panels.air, colors),
    ...panelTitle(strip, panels.strip, colors),
    ...panelTitle(`Suction pressure, ${series.pressureUnit}`, panels.suction, colors),
  ];
}

function limitLine({ series, colors }: LayoutContext, range: readonly [number, number]): Json[] {
  if (series.limit === null || series.limit > range[1] || series.limit < range[0]) return [];
  const line = { color: colors.act, width: 1.2, dash: '9px,5px' };
  return [{ type: 'line', xref: 'paper', yref: 'y', x0: 0, x1: 1, y0: series.limit, y1: series.limit, line }];
}

function axes(
  { series, colors, narrow }: LayoutContext,
  panels: Panels,
  range: readonly [number, number],
): Json {
  const grid = { gridcolor: colors.rule, linecolor: colors.rule, zeroline: false };
  const axis = { ...grid, fixedrange: true, tickfont: { color: colors.quiet, size: 12 } };
  const lowest = panels.suction ? 'y3' : panels.strip ? 'y2' : 'y';
  const strip = { ...axis, domain: panels.strip, range: [0, 1.02], tickvals: [0, 1], tickformat: '.0%' };
  return {
    xaxis: {
      ...axis,
      type: 'date',
      fixedrange: narrow,
      anchor: lowest,
      hoverformat: '%a %-d %b %H:%M',
      tickformatstops: [
        { dtickrange: [null, 43_200_000], value: '%H:%M\n%a %-d %b' },
        { dtickrange: [43_200_000, null], value: '%-d %b' },
      ],
      nticks: narrow ? 5 : 12,
      title: { text: '' },
      ...(series.probes.length === 0 && series.suction === null ? { visible: false } : {}),
    },
    ...(panels.air ? { yaxis: { ...axis, domain: panels.air, range: [...range] } } : {}),
    ...(panels.strip ? { yaxis2: strip } : {}),
    ...(panels.suction ? { yaxis3: { ...axis, domain: panels.suction, nticks: panels.air ? 4 : 8 } } : {}),
  };
}

/** The whole layout: the panels over one time axis, the marks and the names. */
export function layoutFor(context: LayoutContext): Json {
  const { series, clock, colors, findings, report, settled, narrow, width } = context;
  const panels = panelsFor(series);
  const view = [clock.toAxis(series.span.from), clock.toAxis(series.span.to)] as const;
  const range = airRange(series, settled) ?? [0, 1];
  const named = panels.air !== null && !narrow;
  const right = named ? 140 : 8;
  const marks = findingMarks({
    findings,
    report,
    colors,
    view,
    panel: panels.main,
    width: width - left - right,
    narrow,
  });
  const airPixels = panels.air === null ? 0 : (panels.air[1] - panels.air[0]) * panels.height;
  const { xaxis, ...others } = axes(context, panels, range) as { xaxis: Json };
  return {
    width,
    height: panels.height + top + bottom,
    margin: { l: left, r: right, t: top, b: bottom, pad: 0 },
    paper_bgcolor: 'rgba(0,0,0,0)',
    plot_bgcolor: 'rgba(0,0,0,0)',
    font: { family: getComputedStyle(document.body).fontFamily, color: colors.ink, size: 12 },
    hovermode: 'x unified',
    hoverlabel: { bgcolor: colors.paper, bordercolor: colors.rule, font: { color: colors.ink, size: 12 } },
    dragmode: narrow ? false : 'zoom',
    showlegend: false,
    separators: '.,',
    xaxis: { ...xaxis, range: [...view] },
    ...others,
    shapes: [
      ...shades(series, clock, colors, panels.main),
      ...(panels.air ? limitLine(context, range) : []),
      ...marks.shapes,
    ],
    annotations: [
      ...panelTitles(context, panels),
      ...marks.annotations,
      ...(named ? endLabels(series, settled, colors, range, airPixels) : []),
    ],
  };
}
