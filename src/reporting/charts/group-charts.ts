import type { Finding } from '../../model/finding.ts';
import { indexAt, timeAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { GroupSignals, Signals } from '../../signals/types.ts';
import { columnMeans } from '../column-means.ts';
import { dayAndTimeText, dayText, endOf } from '../local-time.ts';
import type { SampleRange } from '../reduce-series.ts';
import { siteScale } from '../site-scale.ts';
import { seriesSlots } from './air-panel.ts';
import type { Chart, LinesPanel, Panel } from './chart.ts';
import { shortPointName } from './end-labels.ts';
import { closeUpWindow, highlightOf } from './highlight.ts';
import { domainOf } from './scale.ts';
import { startsPanel } from './starts-panel.ts';
import { suctionPanel } from './suction-panel.ts';
import { timeTicks } from './time-ticks.ts';

const overviewColumns = 240;
const closeUpPixels = 720;
const hour = 3_600_000;
/** More names than this cannot stand beside each other. */
const mostNames = 10;

/** Suction against its target, what the cases behind it did, and the compressors; then some hours close up. */
export function groupCharts(log: Log, signals: Signals, groupId: string, finding: Finding): readonly Chart[] {
  const own = signals.groups.find(({ group }) => group.id === groupId);
  if (own === undefined) return [];
  const charts = [overview(log, own, finding), closeUp(log, own, finding)];
  return charts.filter(({ panels }) => panels.length > 0);
}

function overview(log: Log, own: GroupSignals, finding: Finding): Chart {
  const from = log.grid.startMs;
  const to = endOf(log);
  const whole = { from: 0, to: log.grid.count };
  const { id } = own.group;
  return {
    title: `Suction group ${id} over the whole span`,
    description: `Suction pressure, air of the cases and compressors of ${id} from ${dayText(log, from)} to ${dayText(log, to)}. ${finding.summary}`,
    from,
    to,
    ticks: timeTicks(log, from, to),
    shades: [],
    highlight: highlightOf(finding, log, from, to),
    panels: [
      ...suctionPanel(log, own.group, whole, overviewColumns, 150),
      ...(finding.kind === 'short-cycling' ? startsOf(log, own, finding) : casesPanel(log, own)),
      ...compressorPanels(log, own, whole, overviewColumns),
    ],
  };
}

function closeUp(log: Log, own: GroupSignals, finding: Finding): Chart {
  const { from, to } = closeUpWindow(finding, log);
  const range = { from: indexAt(log.grid, from), to: indexAt(log.grid, to) + 1 };
  return {
    title: `Close up, every reading: ${Math.round((to - from) / hour)} hours to ${dayAndTimeText(log, to)}`,
    description: `Suction pressure and compressors of ${own.group.id} from ${dayAndTimeText(log, from)} to ${dayAndTimeText(log, to)}.`,
    from,
    to,
    ticks: timeTicks(log, from, to),
    shades: [],
    highlight: highlightOf(finding, log, from, to),
    panels: [
      ...suctionPanel(log, own.group, range, closeUpPixels, 120),
      ...compressorPanels(log, own, range, closeUpPixels),
    ],
  };
}

function startsOf(
  log: Log,
  { group, compressorSpells }: GroupSignals,
  { probe, points }: Finding,
): readonly LinesPanel[] {
  const starters = group.compressors.map(({ point }, index) => ({
    label: shortPointName(point, group.id),
    spells: compressorSpells[index]!,
    strong: point === (probe ?? points[0]),
  }));
  return startsPanel(log, starters);
}

function casesPanel(log: Log, { departures }: GroupSignals): readonly LinesPanel[] {
  const { difference, temperatureSign } = siteScale(log);
  const from = log.grid.startMs;
  const noons = log.calendar.days.map((day) => timeAt(log.grid, (day.from + day.to) / 2));
  const named = departures.size <= mostNames;
  const lines = [...departures].map(([circuit, days], index) => ({
    label: named ? circuit : '',
    slot: index % seriesSlots,
    strong: false,
    band: null,
    line: {
      times: noons,
      values: noons.map((_, day) => (Number.isFinite(days[day]) ? difference(days[day]!) : null)),
    },
  }));
  const domain = domainOf([...lines.map(({ line }) => line.values), [0]], 2);
  if (domain === null || lines.length === 0) return [];
  return [
    {
      kind: 'lines',
      title: 'Air of each case above its own usual level, by day',
      unit: temperatureSign,
      height: 170,
      domain,
      lines,
      levels: [{ kind: 'set-point', label: 'usual', line: { times: [from, endOf(log)], values: [0, 0] } }],
    },
  ];
}

function compressorPanels(
  log: Log,
  { group }: GroupSignals,
  range: SampleRange,
  columns: number,
): readonly Panel[] {
  return group.compressors.map(({ point, values }) => {
    const { times, mean } = columnMeans(values, log.grid, range, columns, (share) => share);
    return { kind: 'share', title: `${point}, running`, height: 26, line: { times, values: mean } };
  });
}
