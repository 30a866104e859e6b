import type { Json } from 'plotly.js-dist-min';
import { visible } from '../dom.ts';
import type { CircuitSeries } from '../json.ts';
import type { PlotColors } from './colors.ts';

const lineHeight = 15;
const longestLabel = 20;

interface Label {
  readonly text: string;
  readonly color: string;
  readonly value: number;
}

function lastKnown(values: readonly (number | null)[]): number | null {
  for (let i = values.length - 1; i >= 0; i--) {
    const value = values[i];
    if (value !== null && value !== undefined) return value;
  }
  return null;
}

export function shortened(text: string): string {
  const characters = [...visible(text)];
  return characters.length <= longestLabel
    ? characters.join('')
    : `${characters.slice(0, longestLabel - 1).join('')}…`;
}

function labelsOf(series: CircuitSeries, settled: boolean, colors: PlotColors): Label[] {
  const labels: Label[] = [];
  const add = (text: string, color: string, values: readonly (number | null)[]): void => {
    const value = lastKnown(values);
    if (value !== null) labels.push({ text, color, value });
  };
  series.probes.forEach(({ point, line }, index) => {
    const values = settled ? series.settled.probes[index]!.median : line.values;
    add(shortened(point), colors.probe(index).color, values);
  });
  if (series.setPoint !== null) add('set point', colors.setPoint, series.setPoint.values);
  if (series.limit !== null) labels.push({ text: 'alarm limit', color: colors.act, value: series.limit });
  return labels;
}

/** Names at the right end of the lines, moved apart where they would cover one another. `height` of the panel in pixels. */
export function endLabels(
  series: CircuitSeries,
  settled: boolean,
  colors: PlotColors,
  range: readonly [number, number],
  height: number,
): Json[] {
  const pixels = (value: number): number => ((value - range[0]) / (range[1] - range[0])) * height;
  const inside = labelsOf(series, settled, colors).filter(
    ({ value }) => value >= range[0] && value <= range[1],
  );
  const ordered = inside.sort((a, b) => a.value - b.value);
  let floor = Number.NEGATIVE_INFINITY;
  return ordered.map(({ text, color, value }) => {
    const own = pixels(value);
    const place = Math.max(own, floor + lineHeight);
    floor = place;
    return {
      xref: 'paper',
      yref: 'y',
      x: 1,
      y: value,
      xanchor: 'left',
      yanchor: 'middle',
      xshift: 6,
      yshift: place - own,
      text: escapeLabel(text),
      showarrow: false,
      font: { color, size: 12 },
    };
  });
}

/** plotly reads a few tags in labels; a name from an export must stay text. */
export function escapeLabel(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
