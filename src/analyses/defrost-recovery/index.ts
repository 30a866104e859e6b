import type { Abstention, Verdict } from '../../model/evidence.ts';
import { stepMinutes } from '../../model/grid.ts';
import type { CircuitSignals, GroupSignals } from '../../signals/types.ts';
import { abstention, circuitSubject } from '../evidence-parts.ts';
import { endedByTheClock } from './by-the-clock.ts';
import { lostDrip } from './drip.ts';
import { completeDefrosts, defrostEvents } from './events.ts';
import { heating } from './heating.ts';
import { lengthening } from './lengthening.ts';
import { meta } from './meta.ts';
import { missedDefrosts } from './missed.ts';
import { movedDefrosts } from './moved.ts';
import { noneAnyMore } from './none-any-more.ts';
import { overheated } from './overheated.ts';
import { slowRecovery } from './slow-recovery.ts';

export { meta };

/** How the circuit's defrosts heat, end and are recovered from, and which of them did not come. */
export function analyse(signals: CircuitSignals, group: GroupSignals | null): Verdict {
  if (signals.log.calendar.days.length < meta.minimumDays) return { evidence: [], abstentions: [] };
  const missed = missedDefrosts(signals);
  if (completeDefrosts(signals).length === 0)
    return { evidence: missed, abstentions: missed.length > 0 ? [] : [noDefrosts(signals)] };
  const events = defrostEvents(signals);
  const changed = heating(signals, events);
  const isExtended = changed.some((one) => one.shape === 'extended');
  return {
    evidence: noneAnyMore(signals, [
      ...missed,
      ...movedDefrosts(signals),
      ...slowRecovery(signals, group),
      ...lengthening(signals),
      ...changed,
      ...(isExtended ? [] : endedByTheClock(signals, events)),
      ...overheated(signals),
      ...lostDrip(signals),
    ]),
    abstentions: limits(signals),
  };
}

function noDefrosts(signals: CircuitSignals): Abstention {
  return abstention(
    meta.id,
    circuitSubject(signals.circuit),
    'No defrost can be told in the air of this circuit, and none is logged, so neither recovery nor missed defrosts can be judged.',
    'the defrost status of the circuit, or its schedule in the site file',
  );
}

function limits(signals: CircuitSignals): Abstention[] {
  const minutes = stepMinutes(signals.log.grid);
  if (minutes < 15) return [];
  return [
    abstention(
      meta.id,
      circuitSubject(signals.circuit),
      `Logged every ${minutes} min: a recovery is known only to ±${minutes} min.`,
      'air logged at least every 5 minutes',
    ),
  ];
}
