import type { Html } from '../html/escape.ts';
import { html } from '../html/escape.ts';
import { type Chart, type LinesPanel, type Panel, slotName } from './chart.ts';
import { type EndLabel, spreadLabels } from './end-labels.ts';
import { panelDrawing } from './panel-drawing.ts';
import { linearScale, valueTicks } from './scale.ts';

const axisWidth = 46;
const endsWidth = 132;
const labelSpacing = 14;

function tickText(value: number, step: number): string {
  return value.toFixed(step >= 1 ? 0 : step >= 0.1 ? 1 : 2);
}

function axis(panel: Panel): Html {
  const text = (y: number, label: string): Html =>
    html`<text x="${axisWidth - 6}" y="${y.toFixed(1)}" text-anchor="end">${label}</text>`;
  const labels =
    panel.kind === 'lines' ? linesAxis(panel, text) : panel.kind === 'share' ? shareAxis(panel, text) : [];
  return html`<svg class="axis" width="${axisWidth}" height="${panel.height}" aria-hidden="true">${labels}</svg>`;
}

function linesAxis(panel: LinesPanel, text: (y: number, label: string) => Html): readonly Html[] {
  const y = linearScale(panel.domain, panel.height, 0);
  const ticks = valueTicks(panel.domain, Math.max(2.5, panel.height / 42));
  const step = ticks.length > 1 ? ticks[1]! - ticks[0]! : 1;
  return ticks
    .filter((tick) => y(tick) > 5 && y(tick) < panel.height - 1)
    .map((tick) => text(y(tick) + 4, tickText(tick, step)));
}

function shareAxis(panel: Panel, text: (y: number, label: string) => Html): readonly Html[] {
  return [text(10, '100 %'), text(panel.height - 1, '0')];
}

function lastKnown(values: readonly (number | null)[]): number | null {
  return values.findLast((value) => value !== null) ?? null;
}

function ends(panel: Panel): Html {
  const labels = panel.kind === 'lines' ? lineEnds(panel) : [];
  return html`<svg class="ends" width="${endsWidth}" height="${panel.height}" aria-hidden="true">${labels.map(
    ({ text, y, name }) => html`<text class="${name}" x="8" y="${(y + 4).toFixed(1)}">${text}</text>`,
  )}</svg>`;
}

function lineEnds(panel: LinesPanel): readonly EndLabel[] {
  const y = linearScale(panel.domain, panel.height, 0);
  const labels: EndLabel[] = [];
  const put = (text: string, values: readonly (number | null)[], name: string): void => {
    const last = lastKnown(values);
    if (last !== null) labels.push({ text, y: y(last), name });
  };
  for (const { label, line, slot, strong } of panel.lines) {
    put(label, line.values, `end ${slotName(slot)}${strong ? ' strong' : ''}`);
  }
  for (const { label, line, kind } of panel.levels) put(label, line.values, `end ${kind}`);
  return spreadLabels(labels, panel.height, labelSpacing);
}

function row(chart: Chart, panel: Panel, first: boolean): Html {
  const unit = panel.kind === 'lines' && panel.unit !== '' ? `, ${panel.unit}` : '';
  return html`<div class="panel-title">${panel.title}${unit}</div>
<div class="row">${axis(panel)}<svg class="plot" width="100%" height="${panel.height}" aria-hidden="true">${panelDrawing(chart, panel)}${first ? onsetText(chart) : null}</svg>${ends(panel)}</div>`;
}

function onsetText({ highlight, from, to }: Chart): Html | null {
  if (highlight === null || highlight.label === null) return null;
  const share = (highlight.from - from) / (to - from);
  const [anchor, shift] = share > 0.6 ? ['end', -5] : ['start', 5];
  return html`<text class="onset-text ${highlight.severity}" x="${(share * 100).toFixed(2)}%" y="13" dx="${shift}" text-anchor="${anchor}">${highlight.label}</text>`;
}

function timeAxis({ ticks, from, to }: Chart): Html {
  return html`<div class="row"><span class="axis-space"></span><svg class="plot times" width="100%" height="20" aria-hidden="true">${ticks.map(
    ({ time, label, minor }) => {
      const share = (time - from) / (to - from);
      const anchor = share < 0.03 ? 'start' : share > 0.96 ? 'end' : 'middle';
      return html`<text${minor ? html` class="minor"` : null} x="${(share * 100).toFixed(2)}%" y="14" text-anchor="${anchor}">${label}</text>`;
    },
  )}</svg><span class="ends-space"></span></div>`;
}

function legend(chart: Chart): Html {
  const lines = chart.panels.flatMap((panel) => (panel.kind === 'lines' ? panel.lines : []));
  const levels = chart.panels.flatMap((panel) => (panel.kind === 'lines' ? panel.levels : []));
  const sample = (name: string, label: string, narrowOnly: boolean): Html =>
    html`<li${narrowOnly ? html` class="narrow"` : null}><svg width="30" height="10" aria-hidden="true"><path class="${name}" d="M1 5h28"/></svg>${label}</li>`;
  const shades = new Set(chart.shades.map(({ kind }) => kind));
  const swatch = (name: string, label: string): Html =>
    html`<li><svg width="18" height="10" aria-hidden="true"><rect class="${name}" width="18" height="10"/></svg>${label}</li>`;
  return html`<ul class="legend">${lines.map(({ slot, label, strong }) => sample(`line ${slotName(slot)}${strong ? ' strong' : ''}`, label, true))}${levels.map(({ kind, label }) => sample(`level ${kind}`, label, true))}${shades.has('defrost') ? swatch('defrost', 'defrost') : null}${shades.has('off') ? swatch('off', 'shut off') : null}${chart.highlight === null ? null : swatch(`span ${chart.highlight.severity}`, 'the finding')}</ul>`;
}

/** The chart as a figure that needs no script: it stretches to the page, its texts keep their size. */
export function figure(chart: Chart): Html {
  return html`<figure class="chart">
<figcaption>${chart.title}</figcaption>
<div role="img" aria-label="${chart.description}">
${chart.panels.map((panel, index) => row(chart, panel, index === 0))}
${timeAxis(chart)}
</div>
${legend(chart)}
</figure>`;
}
