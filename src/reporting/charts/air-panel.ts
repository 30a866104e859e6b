import { timeAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import type { CircuitSeries } from '../circuit-series.ts';
import { columnRange } from '../reduce-series.ts';
import { settledBand } from '../settled-band.ts';
import { siteScale } from '../site-scale.ts';
import type { ChartLine, Level, LinesPanel } from './chart.ts';
import { shortPointName } from './end-labels.ts';
import { domainOf } from './scale.ts';

/** Probes beyond this share a colour and a dash with an earlier one; their labels still tell them apart. */
export const seriesSlots = 6;

/** Median and range of settled air of each probe over the whole log. */
export function settledLines(
  log: Log,
  own: CircuitSignals,
  columns: number,
  probe: string | null,
): readonly ChartLine[] {
  const range = { from: 0, to: log.grid.count };
  const count = Math.min(columns, range.to);
  const { temperature } = siteScale(log);
  const times = Array.from({ length: count }, (_, column) => {
    const { from, to } = columnRange(range, count, column);
    return timeAt(log.grid, (from + to - 1) / 2);
  });
  return own.circuit.probes.map(({ point, record }, index) => {
    const { low, median, high } = settledBand(record.values, own.phase, range, count, temperature);
    return {
      label: shortPointName(point, own.circuit.id),
      slot: index % seriesSlots,
      strong: point === probe,
      line: { times, values: median },
      band: { times, low, high },
    };
  });
}

/** Every reading of each probe, as far as the pixels can show it. */
export function readingLines(series: CircuitSeries, probe: string | null): readonly ChartLine[] {
  return series.probes.map(({ point, line }, index) => ({
    label: shortPointName(point, series.circuit),
    slot: index % seriesSlots,
    strong: point === probe,
    line,
    band: null,
  }));
}

/** The probes with their set point and the limit of the alarm in force. */
export function airPanel(series: CircuitSeries, lines: readonly ChartLine[], height: number): LinesPanel {
  const shown = lines.flatMap(({ line, band }) => (band === null ? [line.values] : [band.low, band.high]));
  const levels = levelsOf(series);
  const domain = domainOf([...shown, ...levels.map(({ line }) => line.values)], 4) ?? { low: 0, high: 1 };
  return { kind: 'lines', title: 'Air', unit: series.temperatureUnit, height, domain, lines, levels };
}

function levelsOf({ setPoint, limit, span }: CircuitSeries): readonly Level[] {
  const levels: Level[] = [];
  if (setPoint !== null) levels.push({ kind: 'set-point', label: 'set point', line: setPoint });
  if (limit !== null) {
    const line = { times: [span.from, span.to], values: [limit, limit] };
    levels.push({ kind: 'limit', label: 'alarm limit', line });
  }
  return levels;
}
