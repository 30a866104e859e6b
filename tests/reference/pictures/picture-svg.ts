import type { Chart, Panel } from '../../../src/reporting/charts/chart.ts';
import { panelDrawing } from '../../../src/reporting/charts/panel-drawing.ts';
import {
  axis,
  axisWidth,
  ends,
  endsWidth,
  onsetText,
  panelTitle,
} from '../../../src/reporting/charts/panel-frame.ts';
import { chartRules } from '../../../src/reporting/html/chart-style.ts';
import { type Html, html, trusted } from '../../../src/reporting/html/escape.ts';
import { declarations, lightTheme } from '../../../src/reporting/html/theme.ts';

const width = 800;
const plotWidth = width - axisWidth - endsWidth;
const margin = 10;
const titleHeight = 22;
const panelTitleHeight = 20;
const ticksHeight = 22;
const legendHeight = 20;
const betweenCharts = 14;

/** Something to put at (0, y), and how much room it takes. */
interface Piece {
  readonly height: number;
  readonly at: (y: number) => Html;
}

const text = (name: string, x: number, y: number, words: string): Html =>
  html`<text class="${name}" x="${x}" y="${y}">${words}</text>`;

const placed = (x: number, y: number, of: Html): Html => html`<g transform="translate(${x} ${y})">${of}</g>`;

function panelPiece(chart: Chart, panel: Panel, isFirst: boolean): Piece {
  return {
    height: panelTitleHeight + panel.height,
    at: (y) => html`${text('title', axisWidth, y + 14, panelTitle(panel))}
${placed(0, y + panelTitleHeight, html`${axis(panel)}<svg x="${axisWidth}" class="plot" width="${plotWidth}" height="${panel.height}">${panelDrawing(chart, panel)}${isFirst ? onsetText(chart) : null}</svg><path class="grid" d="M${axisWidth} ${panel.height}h${plotWidth}"/>${placed(width - endsWidth, 0, ends(panel))}`)}`,
  };
}

function ticksPiece({ ticks, from, to }: Chart): Piece {
  const labels = (y: number): readonly Html[] =>
    ticks.map(({ time, label }) => {
      const x = axisWidth + ((time - from) / (to - from)) * plotWidth;
      return html`<text x="${x.toFixed(1)}" y="${y + 15}" text-anchor="middle">${label}</text>`;
    });
  return { height: ticksHeight, at: (y) => html`${labels(y)}` };
}

function legendPiece({ shades, highlight }: Chart, meaning: string): readonly Piece[] {
  const kinds = new Set(shades.map(({ kind }) => kind));
  const entries: (readonly [name: string, words: string])[] = [
    ...(kinds.has('defrost') ? [['defrost', 'defrost'] as const] : []),
    ...(kinds.has('off') ? [['off', 'shut off'] as const] : []),
    ...(highlight === null ? [] : [[`span ${highlight.severity}`, meaning] as const]),
  ];
  if (entries.length === 0) return [];
  const at = (y: number): Html => {
    let x = axisWidth;
    const parts = entries.map(([name, words]) => {
      const part = html`<g class="legend"><rect class="${name}" x="${x}" y="${y + 2}" width="18" height="11"/></g>${text('words', x + 24, y + 12, words)}`;
      x += 48 + 7 * words.length;
      return part;
    });
    return html`${parts}`;
  };
  return [{ height: legendHeight, at }];
}

function chartPieces(chart: Chart, meaning: string): readonly Piece[] {
  return [
    { height: titleHeight, at: (y) => text('heading', axisWidth, y + 15, chart.title) },
    ...chart.panels.map((panel, index) => panelPiece(chart, panel, index === 0)),
    ticksPiece(chart),
    ...legendPiece(chart, meaning),
  ];
}

/** A picture as one SVG file: its style inside, nothing fetched, light on white. `meaning` says what the tint marks. */
export function pictureSvg(charts: readonly Chart[], description: string, meaning: string): string {
  const gap: Piece = { height: betweenCharts, at: () => html`` };
  const pieces = charts.flatMap((chart, index) => [
    ...(index === 0 ? [] : [gap]),
    ...chartPieces(chart, meaning),
  ]);
  let y = margin;
  const body = pieces.map((piece) => {
    const drawn = piece.at(y);
    y += piece.height;
    return drawn;
  });
  const height = Math.ceil(y + margin);
  const style = `:root{${declarations(lightTheme)}}${chartRules()}
.chart{margin:0}.chart text.heading{font-weight:600;font-size:14px;fill:var(--ink)}`;
  return html`<svg xmlns="http://www.w3.org/2000/svg" class="chart" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img">
<title>${description}</title>
<style>${trusted(style)}</style>
<rect width="${width}" height="${height}" fill="${lightTheme.card}"/>
${body}
</svg>
`.toString();
}
