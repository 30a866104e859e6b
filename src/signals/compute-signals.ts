import type { Log } from '../model/log.ts';
import { circuitSignals } from './circuit-signals.ts';
import { clockWindows } from './clock-windows.ts';
import { dailyPressure } from './daily-pressure.ts';
import { groupSignals } from './group-signals.ts';
import { withoutSharedSteps } from './shared-steps.ts';
import type { Signals } from './types.ts';

/**
 * Everything that the analyses share: phases, defrosts, daily summaries, spells and what the peers do. Linear in
 * the samples of the log; the log is not changed.
 */
export function computeSignals(log: Log): Signals {
  const clock = clockWindows(log.grid, log.calendar);
  const alone = log.circuits.map((circuit) => circuitSignals(circuit, log, clock));
  const suction = new Map(
    log.suctionGroups.map(({ id, pressure }) => [id, dailyPressure(pressure, log.calendar)] as const),
  );
  const circuits = withoutSharedSteps(alone, suction, log.calendar);
  const groups = log.suctionGroups.map((group) => {
    const members = circuits.filter((signals) => signals.circuit.suctionGroup === group.id);
    return groupSignals(group, suction.get(group.id)!, members, log.calendar);
  });
  return { log, circuits, groups };
}
