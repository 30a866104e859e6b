import type { ExampleName, ExampleOptions } from '../../../sample-logs/maker/examples.ts';
import { exampleStore } from '../../../sample-logs/maker/examples.ts';
import { toLog } from '../../../sample-logs/maker/to-log.ts';
import type { Severity } from '../../../src/model/finding.ts';
import { indexAt, timeAt } from '../../../src/model/grid.ts';
import type { Log } from '../../../src/model/log.ts';
import { airPanel, readingLines, settledLines } from '../../../src/reporting/charts/air-panel.ts';
import type { Chart, Highlight, LinesPanel, Panel, Shade } from '../../../src/reporting/charts/chart.ts';
import { timeTicks } from '../../../src/reporting/charts/time-ticks.ts';
import { type CircuitSeries, circuitSeries, circuitSignals } from '../../../src/reporting/circuit-series.ts';
import { dayText, endOf } from '../../../src/reporting/local-time.ts';
import type { SampleRange } from '../../../src/reporting/reduce-series.ts';
import { computeSignals } from '../../../src/signals/compute-signals.ts';
import type { CircuitSignals, Signals } from '../../../src/signals/types.ts';

export const hour = 3_600_000;
export const day = 24 * hour;

/** A history whose truth is known, ready to be drawn. `onset` is when the fault was planted, not when it was found. */
export interface Scene {
  readonly log: Log;
  readonly signals: Signals;
  readonly onset: number;
}

export function sceneOf(log: Log, onset: number): Scene {
  return { log, signals: computeSignals(log), onset };
}

export function storeScene(name: ExampleName, options: ExampleOptions = {}, intervalMinutes = 5): Scene {
  const store = exampleStore(name, options);
  return sceneOf(
    toLog(store, { logging: { intervalMinutes } }),
    store.truth.faults[0]?.onset ?? store.startMs,
  );
}

export interface Span {
  readonly from: number;
  readonly to: number;
}

export function wholeSpan({ log }: Scene): Span {
  return { from: log.grid.startMs, to: endOf(log) };
}

/** Days after the start of the log. */
export function daysIn({ log }: Scene, from: number, to: number): Span {
  return { from: log.grid.startMs + from * day, to: log.grid.startMs + to * day };
}

export function samplesOf({ log }: Scene, { from, to }: Span): SampleRange {
  return { from: indexAt(log.grid, from), to: indexAt(log.grid, to) + 1 };
}

export function chartOf(
  { log }: Scene,
  title: string,
  { from, to }: Span,
  panels: readonly Panel[],
  rest: { readonly highlight?: Highlight | null; readonly shades?: readonly Shade[] } = {},
): Chart {
  return {
    title,
    description: '',
    from,
    to,
    ticks: timeTicks(log, from, to),
    shades: rest.shades ?? [],
    highlight: rest.highlight ?? null,
    panels,
  };
}

/** The tint from `from` on, its first day named. */
export function tint({ log }: Scene, from: number, to: number, severity: Severity = 'watch'): Highlight {
  return { severity, from, to, label: `since ${dayText(log, from)}` };
}

export function circuitOf({ signals }: Scene, id = 'M01'): CircuitSignals {
  return circuitSignals(signals, id);
}

/** Median and range of settled air of every probe, set point and limit. */
export function settledAir(scene: Scene, id = 'M01', probe: number | null = null, columns = 96): LinesPanel {
  const own = circuitOf(scene, id);
  const { from, to } = wholeSpan(scene);
  const series = circuitSeries(scene.log, scene.signals, id, from, to, columns);
  const strong = probe === null ? null : own.circuit.probes[probe]!.point;
  return airPanel(series, settledLines(scene.log, own, columns, strong), 190);
}

export function seriesIn(scene: Scene, { from, to }: Span, id = 'M01', pixels = 300): CircuitSeries {
  return circuitSeries(scene.log, scene.signals, id, from, to, pixels);
}

/** Every reading of the probes, without the alarm limit where it would press the rest together. */
export function readings(series: CircuitSeries, probe: number | null = null, height = 180): LinesPanel {
  const strong = probe === null ? null : series.probes[probe]!.point;
  return airPanel({ ...series, limit: null }, readingLines(series, strong), height);
}

export function valvePanel({ valve }: CircuitSeries): readonly Panel[] {
  return valve === null ? [] : [{ kind: 'share', title: 'Valve open', height: 28, line: valve.line }];
}

export function shadesOf({ defrosts, off }: CircuitSeries): readonly Shade[] {
  return [
    ...defrosts.map(({ from, to }): Shade => ({ kind: 'defrost', from, to })),
    ...off.map(({ from, to }): Shade => ({ kind: 'off', from, to })),
  ];
}

/** One value a local day, drawn at its noon. */
export function dailyLine(log: Log, values: ArrayLike<number>, convert: (value: number) => number) {
  return {
    times: log.calendar.days.map(({ from, to }) => timeAt(log.grid, (from + to) / 2)),
    values: log.calendar.days.map((_, index) =>
      Number.isFinite(values[index]!) ? convert(values[index]!) : null,
    ),
  };
}
