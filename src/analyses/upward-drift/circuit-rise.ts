import { fitRamp, isClear, type Ramp } from '../../maths/fit-ramp.ts';
import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import type { CircuitSignals, GroupSignals } from '../../signals/types.ts';
import { commonMode } from './common-mode.ts';
import { dutyAgainstOthers } from './duty.ts';
import { dutyClarity } from './duty-rise.ts';
import { endMinusStart } from './probe-rises.ts';
import { findRise } from './rise.ts';
import { settings } from './settings.ts';
import { riseEvidence } from './write-evidence.ts';

/** The circuit as a whole above its set point, most of its probes together, and its neighbours on the rack not. */
export function circuitRise(
  signals: CircuitSignals,
  group: GroupSignals | null,
  members: readonly CircuitSignals[],
): Evidence | null {
  const common = commonMode(signals, group);
  const level = signals.level.map((value, day) => value - common[day]!);
  const rise = findRise(level);
  if (rise === null) return null;
  const moved = signals.probes.map((probe) => endMinusStart(probe.median, rise.ramp.start));
  const sharing = moved.filter((one) => one >= rise.size / 2).length / Math.max(1, moved.length);
  if (sharing < settings.sharedProbes.value) return null;
  const setPoint = median(signals.setPoint);
  const absolute = level.map((value) => value + (Number.isFinite(setPoint) ? setPoint : 0));
  const duty = dutyAgainstOthers(signals, members);
  const start = rise.ramp.start;
  const witness = dutyStart(duty, rise.ramp);
  return riseEvidence(signals, group, null, rise, absolute, witness ?? start, {
    ownRise: endMinusStart(absolute, start),
    sharingProbes: sharing,
    probes: moved.length,
    dutyRise: endMinusStart(duty, start),
    dutyNow: median(signals.duty.filter(Number.isFinite).slice(-3)),
    swingRatio: ratioAfter(signals, start, (probe) => probe.swing),
    recoveryRatio: ratioAfter(signals, start, (probe) => probe.recovery),
    dayNightRatio: dayNightShift(signals, start) / rise.size,
    setPointChange: endMinusStart(signals.setPoint, start),
    witnessDays: witness === null ? 0 : start - witness,
  });
}

/** How long before the air a valve can show that its coil starves or ices. */
const mostDaysAhead = 10;

/** The day on which the valve began to feed more, when that was before the air rose; else null. */
function dutyStart(duty: Float64Array, rise: Ramp): number | null {
  const part = duty.subarray(0, rise.end + 1);
  const ramp = fitRamp(
    part.map((_, day) => day),
    part,
  );
  if (ramp === null || ramp.after < ramp.before || !isClear(ramp, dutyClarity)) return null;
  const ahead = rise.start - ramp.start;
  return ahead > 0 && ahead <= mostDaysAhead ? ramp.start : null;
}

type Pick = (probe: CircuitSignals['probes'][number]) => Float64Array;

function ratioAfter(signals: CircuitSignals, start: number, pick: Pick): number {
  const over = (from: number, to: number | undefined): number =>
    median(signals.probes.map((probe) => median(pick(probe).subarray(from, to))));
  return over(start + 1, undefined) / over(0, start + 1);
}

function dayNightShift(signals: CircuitSignals, start: number): number {
  const shift = (pick: Pick): number =>
    median(signals.probes.map((probe) => endMinusStart(pick(probe), start)));
  return shift((probe) => probe.day) - shift((probe) => probe.night);
}
