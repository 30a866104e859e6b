import { type Clarity, fitRamp, isClear, type Ramp } from '../../maths/fit-ramp.ts';
import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { timeAt } from '../../model/grid.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../../signals/types.ts';
import { defrostAnswer } from '../defrost-answer.ts';
import { commonMode, levelAtOneSetPoint, withoutCommon } from './common-mode.ts';
import { dutyAgainstOthers } from './duty.ts';
import { dutyClarity } from './duty-rise.ts';
import { endMinusStart } from './probe-rises.ts';
import { returnGap } from './return-gap.ts';
import { findRise } from './rise.ts';
import { settings } from './settings.ts';
import { suddenOnset } from './sudden-onset.ts';
import { riseEvidence } from './write-evidence.ts';

/** The circuit as a whole above its set point, most of its probes together, and its neighbours on the rack not. */
export function circuitRise(
  signals: CircuitSignals,
  group: GroupSignals | null,
  members: readonly CircuitSignals[],
  site: Signals,
): Evidence | null {
  const common = commonMode(signals, group, site);
  const level = withoutCommon(levelAtOneSetPoint(signals), common);
  const rise = findRise(level);
  if (rise === null) return null;
  const moved = signals.probes.map((probe) => endMinusStart(probe.median, rise.ramp.start));
  // By the same days for a probe as for the circuit: a rise of the last day or two is larger than its last three say.
  const half = Math.min(rise.size, endMinusStart(level, rise.ramp.start)) / 2;
  const sharing = moved.filter((one) => one >= half).length / Math.max(1, moved.length);
  if (sharing < settings.sharedProbes.value) return null;
  const setPoint = median(signals.setPoint);
  const absolute = level.map((value) => value + (Number.isFinite(setPoint) ? setPoint : 0));
  const duty = dutyAgainstOthers(signals, members);
  const start = rise.ramp.start;
  const witness = earlierStart(signals, duty, rise.ramp);
  const sudden = suddenOnset(signals, rise.ramp, rise.size);
  const evidence = riseEvidence(signals, group, null, rise, absolute, witness ?? start, {
    ownRise: endMinusStart(absolute, start),
    compared: common.some(Number.isFinite) ? 1 : 0,
    sharingProbes: sharing,
    probes: moved.length,
    dutyRise: endMinusStart(duty, start),
    dutyNow: median(signals.duty.filter(Number.isFinite).slice(-3)),
    swingRatio: ratioAfter(signals, start, (probe) => probe.swing),
    recoveryRatio: ratioAfter(signals, start, (probe) => probe.recovery),
    peakLag:
      median(signals.probes.map((probe) => endMinusStart(probe.peak, start))) -
      endMinusStart(absolute, start),
    ...defrostAnswer(signals, start),
    ...returnGap(signals, start),
    dayNightRatio: dayNightShift(signals, start) / rise.size,
    setPointChange: endMinusStart(signals.setPoint, start),
    ...(isLogged(signals) ? { overLoggedSetPoint: 1 } : {}),
    witnessDays: witness === null ? 0 : start - witness,
  });
  if (sudden === null) return evidence;
  return {
    ...evidence,
    shape: 'step',
    onset: timeAt(signals.log.grid, sudden),
    features: { ...evidence.features, sudden: 1 },
  };
}

/** How long before the air a valve or a cycle can show that its coil starves or ices. */
const mostDaysAhead = 10;
const swingClarity = { leastSize: 0.15, leastScales: 4, leastScale: 0.03, leastExplained: 0.6 };

/** The day on which the valve began to feed more, or the air to swing less, when that was before it rose; else null. */
function earlierStart(signals: CircuitSignals, duty: Float64Array, rise: Ramp): number | null {
  const swing = signals.level.map((_, day) => median(signals.probes.map((probe) => probe.swing[day]!)));
  const usual = median(swing.subarray(0, rise.start + 1));
  const shrinking = swing.map((value) => -value / usual);
  const starts = [startOf(duty, rise, dutyClarity), startOf(shrinking, rise, swingClarity)].filter(
    (start) => start !== null,
  );
  return starts.length === 0 ? null : Math.min(...starts);
}

function startOf(days: Float64Array, rise: Ramp, clarity: Clarity): number | null {
  const part = days.subarray(0, rise.end + 1);
  const ramp = fitRamp(
    part.map((_, day) => day),
    part,
  );
  if (ramp === null || ramp.after < ramp.before || !isClear(ramp, clarity)) return null;
  const ahead = rise.start - ramp.start;
  return ahead > 0 && ahead <= mostDaysAhead ? ramp.start : null;
}

/** The level is held against a set point that the log follows: what remains is none of it. */
function isLogged({ circuit }: CircuitSignals): boolean {
  return circuit.setPoint !== null && typeof circuit.setPoint !== 'number';
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
