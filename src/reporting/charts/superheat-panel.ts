import { timeAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { columnRange } from '../reduce-series.ts';
import { settledBand } from '../settled-band.ts';
import { siteScale } from '../site-scale.ts';
import type { LinesPanel } from './chart.ts';
import { domainOf } from './scale.ts';

/** The superheat channel while the circuit cools, median and range a column. */
export function superheatPanel(
  log: Log,
  { circuit, phase }: CircuitSignals,
  columns: number,
): readonly LinesPanel[] {
  if (circuit.superheat === null) return [];
  const { difference, temperatureSign } = siteScale(log);
  const range = { from: 0, to: log.grid.count };
  const count = Math.min(columns, range.to);
  const times = Array.from({ length: count }, (_, column) => {
    const { from, to } = columnRange(range, count, column);
    return timeAt(log.grid, (from + to - 1) / 2);
  });
  const { low, median, high } = settledBand(circuit.superheat.values, phase, range, count, difference);
  const domain = domainOf([low, high, [0]], 6);
  if (domain === null) return [];
  const line = { times, values: median };
  return [
    {
      kind: 'lines',
      title: 'Superheat',
      unit: temperatureSign,
      height: 130,
      domain,
      lines: [{ label: 'superheat', slot: 'plain', strong: false, line, band: { times, low, high } }],
      levels: [],
    },
  ];
}
