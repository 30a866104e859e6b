import { stepMinutes, timeAt } from '../model/grid.ts';
import type { CircuitSignals } from '../signals/types.ts';
import type { EpochMs, Minutes } from '../units/quantities.ts';
import { alarmInputOf, lockOutOf } from './alarm-input.ts';
import type { AlarmRule } from './alarm-rule.ts';
import { replayAlarm, type Trip } from './replay.ts';

export interface AlarmHistory {
  readonly rule: AlarmRule;
  readonly trips: readonly Trip[];
  readonly firstTrip: EpochMs | null;
  /** Time a day in which the alarm could not have come: locked out, or nothing known. */
  readonly blindMinutesADay: Minutes;
}

/** What this alarm would have done over the circuit's history. Throws a RangeError for a probe that is not there. */
export function replayOnCircuit(signals: CircuitSignals, rule: AlarmRule): AlarmHistory {
  const { grid } = signals.log;
  const input = alarmInputOf(signals, rule.input);
  const locked = lockOutOf(signals, rule.lockOutAfterMinutes);
  const { trips, blindSamples } = replayAlarm(input, locked, rule, stepMinutes(grid));
  const first = trips[0];
  return {
    rule,
    trips,
    firstTrip: first === undefined ? null : timeAt(grid, first.from),
    blindMinutesADay: (blindSamples / grid.count) * 1440,
  };
}
