import type { Json } from 'plotly.js-dist-min';
import { visible } from '../dom.ts';
import type { CircuitSeries, Line } from '../json.ts';
import { faded, type PlotColors } from './colors.ts';
import type { SiteClock } from './site-clock.ts';

interface TraceContext {
  readonly series: CircuitSeries;
  readonly clock: SiteClock;
  readonly colors: PlotColors;
  /** Probes that a finding is about; drawn stronger. */
  readonly marked: ReadonlySet<string>;
}

const common = { type: 'scatter', mode: 'lines', connectgaps: false, showlegend: false } as const;

/** Two samples a column and breaks: plotly draws what it is given, in axis time. */
function points(times: readonly number[], values: readonly (number | null)[], clock: SiteClock): Json {
  return { x: times.map(clock.toAxis), y: values };
}

function probeTraces({ series, clock, colors, marked }: TraceContext): Json[] {
  return series.probes.map(({ point, line }, index) => {
    const { color, dash } = colors.probe(index);
    return {
      ...common,
      ...points(line.times, line.values, clock),
      name: visible(point),
      line: { color, dash, width: marked.has(point) ? 2.2 : 1.3 },
      hovertemplate: `%{y:.1f} ${series.temperatureUnit}`,
    };
  });
}

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

function settledTraces({ series, clock, colors, marked }: TraceContext): Json[] {
  const x = series.settled.times.map(clock.toAxis);
  return series.settled.probes.flatMap(({ point, low, median, high }, index): Json[] => {
    const { color, dash } = colors.probe(index);
    const outline = runsOf(low).flatMap(({ from, to }) => {
      const forth = x.slice(from, to).map((time, i) => [time, high[from + i]]);
      const back = x
        .slice(from, to)
        .map((time, i) => [time, low[from + i]])
        .reverse();
      return [...forth, ...back, [null, null]];
    });
    const band = {
      ...common,
      x: outline.map(([time]) => time),
      y: outline.map(([, value]) => value),
      fill: 'toself',
      fillcolor: faded(color, 0.12),
      line: { width: 0 },
      hoverinfo: 'skip',
    };
    const middle = {
      ...common,
      x,
      y: median,
      name: visible(point),
      line: { color, dash, width: marked.has(point) ? 2.6 : 1.6 },
      hovertemplate: `%{y:.1f} ${series.temperatureUnit}`,
    };
    return [band, middle];
  });
}

function setPointTrace({ series, clock, colors }: TraceContext): Json[] {
  if (series.setPoint === null) return [];
  const { times, values } = series.setPoint;
  return [
    {
      ...common,
      ...points(times, values, clock),
      name: 'set point',
      line: { color: colors.setPoint, dash: '1px,3px', width: 1.5, shape: 'hv' },
      hovertemplate: `%{y:.1f} ${series.temperatureUnit}`,
    },
  ];
}

function stripTrace(line: Line, name: string, yaxis: string, { clock, colors }: TraceContext): Json {
  return {
    ...common,
    ...points(line.times, line.values, clock),
    name,
    yaxis,
    fill: 'tozeroy',
    fillcolor: faded(colors.strip, 0.45),
    line: { color: colors.strip, width: 1, shape: 'hvh' },
    hovertemplate: '%{y:.0%} open',
  };
}

function suctionTraces(context: TraceContext): Json[] {
  const { series, clock, colors } = context;
  if (series.suction === null) return [];
  const { line, target } = series.suction;
  const unit = series.pressureUnit;
  const traces: Json[] = [
    {
      ...common,
      ...points(line.times, line.values, clock),
      name: 'suction',
      yaxis: 'y3',
      line: { color: colors.ink, width: 1.1 },
      hovertemplate: `%{y:.1f} ${unit}`,
    },
  ];
  if (target !== null) {
    traces.push({
      ...common,
      ...points(target.times, target.values, clock),
      name: 'suction set point',
      yaxis: 'y3',
      line: { color: colors.setPoint, dash: '1px,3px', width: 1.5, shape: 'hv' },
      hovertemplate: `%{y:.1f} ${unit}`,
    });
  }
  return traces;
}

/** Every line of the plot; with `settled` the air of the probes without defrosts and recoveries. */
export function tracesFor(context: TraceContext, settled: boolean): Json[] {
  const { valve } = context.series;
  return [
    ...(settled ? settledTraces(context) : probeTraces(context)),
    ...setPointTrace(context),
    ...(valve === null ? [] : [stripTrace(valve.line, 'valve', 'y2', context)]),
    ...suctionTraces(context),
  ];
}
