import type { Json } from 'plotly.js-dist-min';
import type { Band } from '../json.ts';
import { faded } from './colors.ts';

/** Runs without a gap: a band is filled run by run, as a fill does not stop at a gap. */
function runsOf(values: readonly (number | null)[]): { from: number; to: number }[] {
  const runs: { from: number; to: number }[] = [];
  let from = -1;
  for (let i = 0; i <= values.length; i++) {
    const known = i < values.length && values[i] !== null;
    if (known && from < 0) from = i;
    if (!known && from >= 0) {
      runs.push({ from, to: i });
      from = -1;
    }
  }
  return runs;
}

/** The area between lowest and highest, faint and without a line of its own. `x` in axis time. */
export function bandTrace(x: readonly number[], { low, high }: Band, color: string, opacity: number): Json {
  const outline = runsOf(low).flatMap(({ from, to }) => {
    const forth = x.slice(from, to).map((time, i) => [time, high[from + i]]);
    const back = x
      .slice(from, to)
      .map((time, i) => [time, low[from + i]])
      .reverse();
    return [...forth, ...back, [null, null]];
  });
  return {
    type: 'scatter',
    mode: 'lines',
    showlegend: false,
    x: outline.map(([time]) => time),
    y: outline.map(([, value]) => value),
    fill: 'toself',
    fillcolor: faded(color, opacity),
    line: { width: 0 },
    hoverinfo: 'skip',
  };
}
