import type { Abstention, Evidence, Verdict } from '../../model/evidence.ts';
import { stepMinutes } from '../../model/grid.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../../signals/types.ts';
import { deadProbes } from './dead-probes.ts';
import { flutteringProbes } from './fluttering-probes.ts';
import { foreignDefrosts } from './foreign-defrosts.ts';
import { lastingChanges } from './lasting-changes.ts';
import { meta } from './meta.ts';
import { offsetTable } from './offset-table.ts';
import { oldHabits } from './old-habits.ts';
import { isLooseContact, passingChanges } from './passing-changes.ts';
import { suddenChanges } from './sudden-changes.ts';
import { swappedProbes } from './swapped.ts';

export { meta };
export const scope = 'circuit';

const coarsestMinutes = 15;

/**
 * Every probe against its own neighbours: first the ones that do not measure at all (motionless, silent), then,
 * among the rest, those that were exchanged, those that flutter, those that changed, those that changed within hours, and those that have
 * always stood far off.
 */
export function analyse(signals: CircuitSignals, group: GroupSignals | null, site: Signals): Verdict {
  const abstention = cannotJudge(signals);
  if (signals.circuit.probes.length < 2) return { evidence: [], abstentions: [abstention!] };
  const dead = deadProbes(signals);
  const living = signals.circuit.probes.map((_, probe) => probe).filter((probe) => !dead.without.has(probe));
  const evidence: Evidence[] = [...dead.evidence];
  if (living.length >= 2 && stepMinutes(signals.log.grid) <= coarsestMinutes) {
    const table = offsetTable(signals);
    const foreign = foreignDefrosts(signals, site, living);
    const within = swappedProbes(signals, table, living);
    const swapped = [...foreign, ...within];
    const exchanged = new Set([...foreign.map((one) => one.probe), ...within.flatMap((one) => one.points)]);
    const settled = living.filter((probe) => !exchanged.has(signals.circuit.probes[probe]!.point));
    evidence.push(...flutteringProbes(signals, living).filter((one) => !exchanged.has(one.probe!)));
    const passing = passingChanges(signals, table, settled);
    const loose = new Set(passing.filter(isLooseContact).map((one) => one.probe));
    const changed = [
      ...lastingChanges(signals, table, group, settled),
      ...suddenChanges(signals, table, group, settled),
    ].filter((one) => !loose.has(one.probe));
    const lasting = new Set(changed.map((one) => one.probe));
    const episodes = passing.filter((one) => !lasting.has(one.probe));
    const seen = new Set([...changed, ...episodes].map((one) => one.probe));
    evidence.push(...swapped, ...changed, ...episodes, ...oldHabits(signals, table, group, settled, seen));
  }
  return { evidence, abstentions: abstention === null ? [] : [abstention] };
}

function cannotJudge(signals: CircuitSignals): Abstention | null {
  const { circuit, log } = signals;
  const say = (reason: string, needs: string | null): Abstention => ({
    analysis: meta.id,
    circuit: circuit.id,
    suctionGroup: circuit.suctionGroup,
    reason,
    needs,
  });
  if (circuit.probes.length < 2) {
    return say('With a single air probe there is no neighbour to hold it against.', 'a second air probe');
  }
  const minutes = stepMinutes(log.grid);
  if (minutes > coarsestMinutes) {
    return say(
      `Logged every ${minutes} min: settled air between defrosts holds too few readings to compare probes.`,
      `an interval of ${coarsestMinutes} min or less`,
    );
  }
  if (log.calendar.days.length < meta.minimumDays) {
    return say(
      `Days: ${log.calendar.days.length}, too few to tell a change between neighbours from their habit; only sudden and dead probes are judged.`,
      `${meta.minimumDays} days of history`,
    );
  }
  return null;
}
