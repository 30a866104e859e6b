import { dayAt, timeAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import { isStart } from '../../signals/spells.ts';
import type { Spells } from '../../signals/types.ts';
import { seriesSlots } from './air-panel.ts';
import type { LinesPanel } from './chart.ts';
import { domainOf } from './scale.ts';

/** One machine or valve with its spells. */
export interface Starter {
  readonly label: string;
  readonly spells: Spells;
  readonly strong: boolean;
}

/** Starts an hour of each machine, by day. A spell that begins at a gap is no start. */
export function startsPanel(log: Log, starters: readonly Starter[]): readonly LinesPanel[] {
  const { days } = log.calendar;
  const noons = days.map(({ from, to }) => timeAt(log.grid, (from + to) / 2));
  const lines = starters.map(({ label, spells, strong }, index) => {
    const counts = days.map(() => 0);
    for (const [k, from] of spells.from.entries())
      if (isStart(spells, k)) counts[dayAt(log.calendar, from)]! += 1;
    const values = counts.map((count, day) => {
      const hours = ((days[day]!.to - days[day]!.from) * log.grid.stepMs) / 3_600_000;
      return hours < 6 ? null : count / hours;
    });
    return { label, slot: index % seriesSlots, strong, band: null, line: { times: noons, values } };
  });
  const domain = domainOf([...lines.map(({ line }) => line.values), [0]], 2);
  if (domain === null || lines.length === 0) return [];
  return [
    {
      kind: 'lines',
      title: 'Starts an hour, by day',
      unit: '',
      height: 130,
      domain: { low: 0, high: domain.high },
      lines,
      levels: [],
    },
  ];
}
