import type { Html } from '../html/escape.ts';
import { html } from '../html/escape.ts';
import { type Chart, type LinesPanel, type Panel, slotName } from './chart.ts';
import { type EndLabel, spreadLabels } from './end-labels.ts';
import { linearScale, valueTicks } from './scale.ts';

export const axisWidth = 46;
export const endsWidth = 132;
const labelSpacing = 14;

function tickText(value: number, step: number): string {
  return value.toFixed(step >= 1 ? 0 : step >= 0.1 ? 1 : 2);
}

/** The numbers at the left of a panel. */
export function axis(panel: Panel): Html {
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

/** The names at the right ends of its lines. */
export function ends(panel: Panel): Html {
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

/** When the finding began, at its upright. */
export function onsetText({ highlight, from, to }: Chart): Html | null {
  if (highlight === null || highlight.label === null) return null;
  const share = (highlight.from - from) / (to - from);
  const [anchor, shift] = share > 0.6 ? ['end', -5] : ['start', 5];
  return html`<text class="onset-text ${highlight.severity}" x="${(share * 100).toFixed(2)}%" y="13" dx="${shift}" text-anchor="${anchor}">${highlight.label}</text>`;
}

export function panelTitle(panel: Panel): string {
  return panel.kind === 'lines' && panel.unit !== '' ? `${panel.title}, ${panel.unit}` : panel.title;
}
