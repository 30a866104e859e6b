import type { Abstention, Evidence, Verdict } from '../../model/evidence.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../../signals/types.ts';
import { circuitRise } from './circuit-rise.ts';
import { dutyRise } from './duty-rise.ts';
import { meta } from './meta.ts';
import { probeRises } from './probe-rises.ts';
import { tradingHoursRise } from './trading-hours.ts';

export { meta };
export const scope = 'circuit';

/** Slow rises of one probe, of the circuit as a whole, and of its valve's share of time open. */
export function analyse(signals: CircuitSignals, group: GroupSignals | null, site: Signals): Verdict {
  const known = signals.level.filter(Number.isFinite).length;
  if (known < meta.minimumDays) {
    return { evidence: [], abstentions: [tooShort(signals, known)] };
  }
  const members = membersOf(group, site);
  const evidence: Evidence[] = probeRises(signals, group, site);
  const whole = circuitRise(signals, group, members, site);
  if (whole !== null) evidence.push(whole);
  else {
    const trading = tradingHoursRise(signals, group, site);
    if (trading !== null) return { evidence: [...evidence, trading], abstentions: [] };
    const duty = dutyRise(signals, members);
    if (duty !== null) evidence.push(duty);
  }
  return { evidence, abstentions: [] };
}

function membersOf(group: GroupSignals | null, site: Signals): CircuitSignals[] {
  return site.circuits.filter((one) => group?.members.includes(one.circuit.id));
}

function tooShort(signals: CircuitSignals, days: number): Abstention {
  return {
    analysis: meta.id,
    circuit: signals.circuit.id,
    suctionGroup: signals.circuit.suctionGroup,
    reason: `Days with settled air: ${days}, too few to tell a drift from chance.`,
    needs: `${meta.minimumDays} days of history`,
  };
}
