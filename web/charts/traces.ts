import type { Json } from 'plotly.js-dist-min';
import { visible } from '../dom.ts';
import type { CircuitSeries, Line } from '../json.ts';
import { bandTrace } from './bands.ts';
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

const pointsOf = ({ times, values }: Line, clock: SiteClock): Json => ({
  x: times.map(clock.toAxis),
  y: values,
});

/** Air of every probe, each reading or the calm medians with their bands. */
function airTraces({ series, clock, colors, marked }: TraceContext, settled: boolean): Json[] {
  const x = series.settled.times.map(clock.toAxis);
  return series.probes.flatMap(({ point, line }, index): Json[] => {
    const { color, dash } = colors.probe(index);
    const strong = marked.has(point);
    const named = { ...common, name: visible(point), hovertemplate: `%{y:.1f} ${series.temperatureUnit}` };
    if (!settled) {
      return [{ ...named, ...pointsOf(line, clock), line: { color, dash, width: strong ? 1.7 : 1 } }];
    }
    const band = series.settled.probes[index]!;
    const middle = { ...named, x, y: band.median, line: { color, dash, width: strong ? 2.8 : 1.6 } };
    return [bandTrace(x, band, color, 0.1), middle];
  });
}

function targetTrace(
  target: Line | null,
  name: string,
  unit: string,
  axis: string,
  context: TraceContext,
): Json[] {
  if (target === null) return [];
  const line = { color: context.colors.setPoint, dash: '1px,3px', width: 1.5, shape: 'hv' };
  const hovertemplate = `%{y:.1f} ${unit}`;
  return [{ ...common, ...pointsOf(target, context.clock), name, yaxis: axis, line, hovertemplate }];
}

function valveTraces({ series, clock, colors }: TraceContext, settled: boolean): Json[] {
  if (series.valve === null) return [];
  const calm = settled ? series.settled.valve : null;
  const line = calm === null ? series.valve.line : { times: series.settled.times, values: calm };
  return [
    {
      ...common,
      ...pointsOf(line, clock),
      name: series.probes.length === 0 ? 'machines' : 'valve',
      yaxis: 'y2',
      fill: 'tozeroy',
      fillcolor: faded(colors.strip, 0.4),
      line: { color: colors.strip, width: 1, shape: settled ? 'linear' : 'hvh' },
      hovertemplate: series.probes.length === 0 ? '%{y:.0%} running' : '%{y:.0%} open',
    },
  ];
}

function suctionTraces(context: TraceContext, settled: boolean): Json[] {
  const { series, clock, colors } = context;
  if (series.suction === null) return [];
  const { line, target } = series.suction;
  const unit = series.pressureUnit;
  const named = { ...common, name: 'suction', yaxis: 'y3', hovertemplate: `%{y:.1f} ${unit}` };
  const calm = settled ? series.settled.suction : null;
  const x = series.settled.times.map(clock.toAxis);
  const lines: Json[] =
    calm === null
      ? [{ ...named, ...pointsOf(line, clock), line: { color: colors.ink, width: 1 } }]
      : [
          { ...bandTrace(x, calm, colors.quiet, 0.22), yaxis: 'y3' },
          { ...named, x, y: calm.mean, line: { color: colors.ink, width: 1.4 } },
        ];
  return [...lines, ...targetTrace(target, 'suction set point', unit, 'y3', context)];
}

/** Every line of the plot; with `settled` the calm picture of a long span. */
export function tracesFor(context: TraceContext, settled: boolean): Json[] {
  const { setPoint, temperatureUnit } = context.series;
  return [
    ...airTraces(context, settled),
    ...targetTrace(setPoint, 'set point', temperatureUnit, 'y', context),
    ...valveTraces(context, settled),
    ...suctionTraces(context, settled),
  ];
}
