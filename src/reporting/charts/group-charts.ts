import type { Finding } from '../../model/finding.ts';
import { timeAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { GroupSignals, Signals } from '../../signals/types.ts';
import { columnMeans } from '../column-means.ts';
import { dayText, endOf } from '../local-time.ts';
import type { SampleRange } from '../reduce-series.ts';
import { siteScale } from '../site-scale.ts';
import type { Chart, LinesPanel, Panel } from './chart.ts';
import { highlightOf } from './circuit-charts.ts';
import { domainOf } from './scale.ts';
import { suctionPanel } from './suction-panel.ts';
import { timeTicks } from './time-ticks.ts';

const columns = 240;
const seriesSlots = 6;
/** More names than this cannot stand beside each other. */
const mostNames = 10;

/** Suction against its target, what the cases behind it did, and the compressors. */
export function groupCharts(log: Log, signals: Signals, groupId: string, finding: Finding): readonly Chart[] {
  const own = signals.groups.find(({ group }) => group.id === groupId);
  if (own === undefined) return [];
  const from = log.grid.startMs;
  const to = endOf(log);
  const panels = [
    ...suctionPanel(log, own.group, wholeSpan(log), columns, 150),
    ...casePanels(log, own),
    ...compressorPanels(log, own),
  ];
  if (panels.length === 0) return [];
  return [
    {
      title: `Suction group ${groupId} and the cases behind it`,
      description: `Suction pressure, air of the cases and compressors of ${groupId} from ${dayText(log, from)} to ${dayText(log, to)}. ${finding.summary}`,
      from,
      to,
      ticks: timeTicks(log, from, to),
      shades: [],
      highlight: highlightOf(finding, log, from, to),
      panels,
    },
  ];
}

const wholeSpan = (log: Log): SampleRange => ({ from: 0, to: log.grid.count });

function casePanels(log: Log, { departures }: GroupSignals): readonly LinesPanel[] {
  const { difference, temperatureSign } = siteScale(log);
  const noons = log.calendar.days.map(({ from, to }) => timeAt(log.grid, (from + to) / 2));
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
      levels: [
        {
          kind: 'set-point',
          label: 'usual',
          line: { times: [log.grid.startMs, endOf(log)], values: [0, 0] },
        },
      ],
    },
  ];
}

function compressorPanels(log: Log, { group }: GroupSignals): readonly Panel[] {
  return group.compressors.map(({ point, values }) => {
    const { times, mean } = columnMeans(values, log.grid, wholeSpan(log), columns, (share) => share);
    return { kind: 'share', title: `${point}, share running`, height: 26, line: { times, values: mean } };
  });
}
