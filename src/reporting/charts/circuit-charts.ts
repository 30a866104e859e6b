import type { Finding } from '../../model/finding.ts';
import { indexAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { CircuitSignals, Signals } from '../../signals/types.ts';
import { type CircuitSeries, circuitSeries, circuitSignals } from '../circuit-series.ts';
import { dayAndTimeText, dayText, endOf } from '../local-time.ts';
import { airPanel, readingLines, settledLines } from './air-panel.ts';
import type { Chart, Panel, Shade } from './chart.ts';
import { shortPointName } from './end-labels.ts';
import { closeUpWindow, highlightOf } from './highlight.ts';
import { recoveryPanel } from './recovery-panel.ts';
import { startsPanel } from './starts-panel.ts';
import { suctionPanel } from './suction-panel.ts';
import { superheatPanel } from './superheat-panel.ts';
import { timeTicks } from './time-ticks.ts';

const overviewColumns = 240;
const closeUpPixels = 720;
const hour = 3_600_000;

/** The whole span in settled air, so that weeks can be read; then some hours with everything that happened. */
export function circuitCharts(
  log: Log,
  signals: Signals,
  circuitId: string,
  finding: Finding,
): readonly Chart[] {
  const own = circuitSignals(signals, circuitId);
  return [overview(log, signals, own, finding), closeUp(log, signals, own, finding)];
}

function overview(log: Log, signals: Signals, own: CircuitSignals, finding: Finding): Chart {
  const { id } = own.circuit;
  const series = circuitSeries(log, signals, id, log.grid.startMs, endOf(log), overviewColumns);
  const { from, to } = series.span;
  return {
    title: 'The whole span: settled air, defrosts and recoveries left out',
    description: `Settled air of each probe of ${id} from ${dayText(log, from)} to ${dayText(log, to)}. ${finding.summary} The daily figures stand in the table below.`,
    from,
    to,
    ticks: timeTicks(log, from, to),
    shades: offShades(series),
    highlight: highlightOf(finding, log, from, to),
    panels: [
      airPanel(series, settledLines(log, own, overviewColumns, finding.probe), 240),
      ...panelsOfKind(log, own, finding),
      ...valvePanel(series),
      ...defrostPanel(series),
      ...suctionOf(log, own, series, overviewColumns),
    ],
  };
}

/** What shows this kind of finding best, where the air alone does not. */
function panelsOfKind(log: Log, own: CircuitSignals, { kind, probe }: Finding): readonly Panel[] {
  const { circuit, valveSpells } = own;
  switch (kind) {
    case 'defrost-recovery':
    case 'defrost-missed':
      return recoveryPanel(log, own, probe);
    case 'superheat':
      return superheatPanel(log, own, overviewColumns);
    case 'short-cycling':
      if (circuit.valve === null || valveSpells.count === 0) return [];
      return startsPanel(log, [
        { label: shortPointName(circuit.valve.point, circuit.id), spells: valveSpells, strong: true },
      ]);
    default:
      return [];
  }
}

function closeUp(log: Log, signals: Signals, own: CircuitSignals, finding: Finding): Chart {
  const { id } = own.circuit;
  const window = closeUpWindow(finding, log);
  const series = circuitSeries(log, signals, id, window.from, window.to, closeUpPixels);
  const { from, to } = series.span;
  return {
    title: `Close up, every reading: ${Math.round((to - from) / hour)} hours to ${dayAndTimeText(log, to)}`,
    description: `Every reading of ${id} from ${dayAndTimeText(log, from)} to ${dayAndTimeText(log, to)}, defrosts shaded.`,
    from,
    to,
    ticks: timeTicks(log, from, to),
    shades: [...defrostShades(series), ...offShades(series)],
    highlight: highlightOf(finding, log, from, to),
    panels: [
      airPanel(series, readingLines(series, finding.probe), 220),
      ...valvePanel(series),
      ...suctionOf(log, own, series, closeUpPixels),
    ],
  };
}

function valvePanel({ valve }: CircuitSeries): readonly Panel[] {
  return valve === null ? [] : [{ kind: 'share', title: 'Valve open', height: 34, line: valve.line }];
}

function defrostPanel({ defrosts }: CircuitSeries): readonly Panel[] {
  return defrosts.length === 0 ? [] : [{ kind: 'marks', title: 'Defrosts', height: 14, spans: defrosts }];
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

function defrostShades({ defrosts }: CircuitSeries): readonly Shade[] {
  return defrosts.map(({ from, to }) => ({ kind: 'defrost', from, to }));
}

function offShades({ off }: CircuitSeries): readonly Shade[] {
  return off.map(({ from, to }) => ({ kind: 'off', from, to }));
}
