import { timeAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { seriesSlots } from './air-panel.ts';
import type { LinesPanel } from './chart.ts';
import { shortPointName } from './end-labels.ts';
import { domainOf } from './scale.ts';

/** How long each probe took to come back after each defrost; where it did not, how long it was watched. */
export function recoveryPanel(
  log: Log,
  { circuit, defrosts }: CircuitSignals,
  probe: string | null,
): readonly LinesPanel[] {
  const times = defrosts.map(({ to }) => timeAt(log.grid, to));
  const lines = circuit.probes.map(({ point }, index) => ({
    label: shortPointName(point, circuit.id),
    slot: index % seriesSlots,
    strong: point === probe,
    band: null,
    line: {
      times,
      values: defrosts.map(({ probes, complete }) => {
        const went = probes[index];
        const minutes = went?.recoveryMinutes ?? went?.watchedMinutes;
        return complete && minutes !== undefined && Number.isFinite(minutes) ? minutes : null;
      }),
    },
  }));
  const domain = domainOf([...lines.map(({ line }) => line.values), [0]], 20);
  if (domain === null || defrosts.length < 2) return [];
  return [
    {
      kind: 'lines',
      title: 'Until the air was back after each defrost',
      unit: 'minutes',
      height: 130,
      domain: { low: 0, high: domain.high },
      lines,
      levels: [],
    },
  ];
}
