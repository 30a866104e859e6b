import type { Finding } from '../../model/finding.ts';
import { indexAt, timeAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { CircuitSignals, Signals } from '../../signals/types.ts';
import { type CircuitSeries, circuitSeries, circuitSignals } from '../circuit-series.ts';
import { dayAndTimeText, dayText, endOf } from '../local-time.ts';
import { columnRange, type ReducedSeries } from '../reduce-series.ts';
import { settledBand } from '../settled-band.ts';
import { siteScale } from '../site-scale.ts';
import type { Chart, ChartLine, Highlight, Level, LinesPanel, Panel, Shade } from './chart.ts';
import { shortPointName } from './end-labels.ts';
import { domainOf } from './scale.ts';
import { suctionPanel } from './suction-panel.ts';
import { timeTicks } from './time-ticks.ts';

const overviewColumns = 240;
const closeUpPixels = 720;
const seriesSlots = 6;
const hour = 3_600_000;

/** The whole span in settled air, so that weeks can be read; then one day with everything that happened. */
export function circuitCharts(
  log: Log,
  signals: Signals,
  circuitId: string,
  finding: Finding,
): readonly Chart[] {
  return [overview(log, signals, circuitId, finding), closeUp(log, signals, circuitId, finding)];
}

function overview(log: Log, signals: Signals, circuitId: string, finding: Finding): Chart {
  const own = circuitSignals(signals, circuitId);
  const { startMs } = log.grid;
  const series = circuitSeries(log, signals, circuitId, startMs, endOf(log), overviewColumns);
  const { from, to } = series.span;
  return {
    title: `The whole span: settled air, defrosts and recoveries left out`,
    description: `Settled air of each probe of ${circuitId} from ${dayText(log, from)} to ${dayText(log, to)}. ${finding.summary} The daily figures stand in the table below.`,
    from,
    to,
    ticks: timeTicks(log, from, to),
    shades: offShades(series),
    highlight: highlightOf(finding, log, from, to),
    panels: [
      airPanel(series, settledLines(log, own, finding), 240),
      ...valvePanel(series),
      ...(series.defrosts.length > 0
        ? [{ kind: 'marks', title: 'Defrosts', height: 14, spans: series.defrosts } as const]
        : []),
      ...suctionOf(log, own, series, overviewColumns),
    ],
  };
}

function closeUp(log: Log, signals: Signals, circuitId: string, finding: Finding): Chart {
  const own = circuitSignals(signals, circuitId);
  const window = closeUpWindow(finding, log);
  const series = circuitSeries(log, signals, circuitId, window.from, window.to, closeUpPixels);
  const { from, to } = series.span;
  const lines = series.probes.map(({ point, line }, index) => ({
    label: shortPointName(point, circuitId),
    slot: index % seriesSlots,
    strong: point === finding.probe,
    line,
    band: null,
  }));
  return {
    title: `Close up, every reading: ${Math.round((to - from) / hour)} hours to ${dayAndTimeText(log, to)}`,
    description: `Every reading of ${circuitId} from ${dayAndTimeText(log, from)} to ${dayAndTimeText(log, to)}, defrosts shaded.`,
    from,
    to,
    ticks: timeTicks(log, from, to),
    shades: [
      ...series.defrosts.map((span) => ({ kind: 'defrost' as const, from: span.from, to: span.to })),
      ...offShades(series),
    ],
    highlight: highlightOf(finding, log, from, to),
    panels: [
      airPanel(series, lines, 220),
      ...valvePanel(series),
      ...suctionOf(log, own, series, closeUpPixels),
    ],
  };
}

/** Fast things need a close look: a day, or six hours where the valve is the trouble. */
function closeUpWindow(finding: Finding, log: Log): { readonly from: number; readonly to: number } {
  const length = (finding.kind === 'short-cycling' ? 6 : 24) * hour;
  const end = endOf(log);
  const stillSo = finding.end === null || finding.end >= end - length;
  const to = stillSo ? end : Math.min(end, finding.onset + 0.75 * length);
  return { from: Math.max(log.grid.startMs, to - length), to };
}

function settledLines(log: Log, own: CircuitSignals, finding: Finding): readonly ChartLine[] {
  const range = { from: 0, to: log.grid.count };
  const columns = Math.min(overviewColumns, range.to);
  const { temperature } = siteScale(log);
  const times = Array.from({ length: columns }, (_, column) => {
    const { from, to } = columnRange(range, columns, column);
    return timeAt(log.grid, (from + to - 1) / 2);
  });
  return own.circuit.probes.map(({ point, record }, index) => {
    const band = settledBand(record.values, own.phase, range, columns, temperature);
    return {
      label: shortPointName(point, own.circuit.id),
      slot: index % seriesSlots,
      strong: point === finding.probe,
      line: { times, values: band.median },
      band: { times, low: band.low, high: band.high },
    };
  });
}

function airPanel(series: CircuitSeries, lines: readonly ChartLine[], height: number): LinesPanel {
  const shown = lines.flatMap(({ line, band }) => (band === null ? [line.values] : [band.low, band.high]));
  const levels = levelsOf(series);
  const domain = domainOf([...shown, ...levels.map(({ line }) => line.values)], 4) ?? { low: 0, high: 1 };
  return { kind: 'lines', title: 'Air', unit: series.temperatureUnit, height, domain, lines, levels };
}

function levelsOf(series: CircuitSeries): readonly Level[] {
  const levels: Level[] = [];
  if (series.setPoint !== null) levels.push({ kind: 'set-point', label: 'set point', line: series.setPoint });
  if (series.limit !== null)
    levels.push({ kind: 'limit', label: 'alarm limit', line: flat(series, series.limit) });
  return levels;
}

function flat({ span }: CircuitSeries, value: number): ReducedSeries {
  return { times: [span.from, span.to], values: [value, value] };
}

function valvePanel({ valve }: CircuitSeries): readonly Panel[] {
  return valve === null ? [] : [{ kind: 'share', title: 'Valve open', height: 34, line: valve.line }];
}

function suctionOf(
  log: Log,
  own: CircuitSignals,
  { span }: CircuitSeries,
  columns: number,
): readonly Panel[] {
  const group = log.suctionGroups.find(({ id }) => id === own.circuit.suctionGroup);
  if (group === undefined) return [];
  const range = { from: indexAt(log.grid, span.from), to: indexAt(log.grid, span.to) + 1 };
  return suctionPanel(log, group, range, columns, 64);
}

function offShades({ off }: CircuitSeries): readonly Shade[] {
  return off.map(({ from, to }) => ({ kind: 'off', from, to }));
}

/** Null where the finding does not touch the chart, or fills it. */
export function highlightOf(finding: Finding, log: Log, from: number, to: number): Highlight | null {
  const end = finding.end ?? endOf(log);
  if (finding.onset > to || end < from) return null;
  if (finding.onset < from && end >= to) return null;
  return {
    severity: finding.severity,
    from: Math.max(from, finding.onset),
    to: Math.min(to, end),
    label: finding.onset < from ? null : `since ${dayText(log, finding.onset)}`,
  };
}
