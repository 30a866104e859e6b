import type { Html } from '../html/escape.ts';
import { html } from '../html/escape.ts';
import { type Chart, type Panel, slotName } from './chart.ts';
import { panelDrawing } from './panel-drawing.ts';
import { axis, ends, onsetText, panelTitle } from './panel-frame.ts';

function row(chart: Chart, panel: Panel, first: boolean): Html {
  return html`<div class="panel-title">${panelTitle(panel)}</div>
<div class="row">${axis(panel)}<svg class="plot" width="100%" height="${panel.height}" aria-hidden="true">${panelDrawing(chart, panel)}${first ? onsetText(chart) : null}</svg>${ends(panel)}</div>`;
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
