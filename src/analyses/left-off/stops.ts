import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { stepMinutes } from '../../model/grid.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { airAtEnd, evidenceOf } from './evidence.ts';
import { settings } from './settings.ts';

/**
 * Stretches in which the circuit was shut off; the ones that last to the end of the log are still so. A short one that
 * is over, or one that most of the group shared, was a visit or a power cut and is not reported here.
 */
export function stops(signals: CircuitSignals, group: GroupSignals | null, site: Signals): Evidence[] {
  const step = stepMinutes(signals.log.grid);
  return signals.offSpells
    .filter(({ from, to }) => (to - from) * step >= settings.offMinutes.value)
    .flatMap(({ from, to }) => {
      const isStill = to >= lastKnown(signals);
      const hours = ((to - from) * step) / 60;
      const shared = sharedShare(from, to, signals, group, site);
      const isVisit = shared >= settings.sharedShare.value;
      if (!isStill && (isVisit || hours < settings.endedHours.value)) return [];
      const warmest = highest(signals.air, from, to);
      const usual = median(signals.level.map((level, day) => level + (signals.setPoint[day]! || 0)));
      return evidenceOf(signals, {
        shape: isStill ? 'off' : 'was-off',
        from,
        to: isStill ? null : to,
        certainty: (signals.circuit.valve === null ? 0.7 : 0.9) + Math.min(0.08, hours / 100),
        measures: [
          measure('hoursOff', hours, 'h'),
          measure('warmestAir', warmest, 'Cel'),
          measure('airNow', isStill ? airAtEnd(signals, to) : Number.NaN, 'Cel'),
          measure('riseWhileOff', warmest - usual, 'K'),
        ],
        features: {
          hours,
          still: isStill ? 1 : 0,
          offShare: shared,
          shared: isVisit ? 1 : 0,
          valveSeen: signals.circuit.valve === null ? 0 : 1,
          defrostsMissed: missedIn(signals, from, to),
        },
      });
    });
}

/** The sample after the last one at which the circuit's air is known. */
function lastKnown({ air }: CircuitSignals): number {
  let last = air.length;
  while (last > 0 && Number.isNaN(air[last - 1]!)) last--;
  return last;
}

function highest(air: Float64Array, from: number, to: number): number {
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = from; i < to; i++) if (air[i]! > highest) highest = air[i]!;
  return highest;
}

/** Share of the other circuits of the group that were off for most of the same time; 0 for a lone circuit. */
function sharedShare(
  from: number,
  to: number,
  signals: CircuitSignals,
  group: GroupSignals | null,
  site: Signals,
): number {
  const others = site.circuits.filter(
    (one) => one !== signals && group !== null && group.members.includes(one.circuit.id),
  );
  const off = others.filter((one) =>
    one.offSpells.some((spell) => 2 * (Math.min(to, spell.to) - Math.max(from, spell.from)) > to - from),
  );
  return others.length === 0 ? 0 : off.length / others.length;
}

function missedIn(signals: CircuitSignals, from: number, to: number): number {
  const days = ((to - from) * stepMinutes(signals.log.grid)) / 1440;
  const seen = signals.defrosts.filter((window) => window.from >= from && window.from < to).length;
  return Math.max(0, Math.floor(signals.slots.length * days) - seen);
}
