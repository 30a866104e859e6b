import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../../signals/types.ts';
import { commonMode, withoutCommon } from './common-mode.ts';
import { findRise } from './rise.ts';
import { settings } from './settings.ts';
import { riseEvidence } from './write-evidence.ts';

const leastCoverage = 0.6;

/**
 * Probes that creep up against the other probes of their circuit. Each neighbour taken alone must be left
 * behind, by two thirds of them at least: beside one probe that reads too cold all the others only look warm.
 */
export function probeRises(signals: CircuitSignals, group: GroupSignals | null, site: Signals): Evidence[] {
  const count = signals.probes.length;
  if (count < 2) return [];
  const levels = signals.probes.map((probe) =>
    probe.median.map((value, day) => (probe.coverage[day]! >= leastCoverage ? value : Number.NaN)),
  );
  const common = commonMode(signals, group, site);
  const evidence: Evidence[] = [];
  for (let probe = 0; probe < count; probe++) {
    const own = levels[probe]!;
    const others = levels.filter((_, other) => other !== probe);
    const rise = findRise(own.map((value, day) => value - median(others.map((other) => other[day]!))));
    if (rise === null || rise.shape === 'step') continue;
    const leftBehind = others.filter((other) => {
      const apart = own.map((value, day) => value - other[day]!);
      return endMinusStart(apart, rise.ramp.start) >= rise.size / 2;
    });
    if (leftBehind.length / others.length < settings.sharedProbes.value) continue;
    const absolute = withoutCommon(own, common);
    const ownRise = endMinusStart(absolute, rise.ramp.start);
    if (count === 2 && ownRise <= 0) continue;
    evidence.push(
      riseEvidence(signals, group, probe, rise, absolute, rise.ramp.start, {
        ownRise,
        probes: count,
        votes: leftBehind.length / others.length,
      }),
    );
  }
  return evidence;
}

/** Median of the last three days minus the median up to the onset. */
export function endMinusStart(days: Float64Array, onsetDay: number): number {
  return median(days.filter(Number.isFinite).slice(-3)) - median(days.subarray(0, onsetDay + 1));
}
