import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import type { CircuitSignals, DefrostWindow, GroupSignals } from '../../signals/types.ts';
import type { Minutes } from '../../units/quantities.ts';
import { measure } from '../evidence-parts.ts';
import { levelChange } from './change.ts';
import { completeDefrosts, isRecovered, minutesToRecover } from './events.ts';
import { evidenceOf } from './evidence.ts';
import { settings } from './settings.ts';

export function recoveryLimit(signals: CircuitSignals, group: GroupSignals | null): Minutes {
  const isLow =
    group?.group.class === 'low' ||
    (group?.group.class == null && median(signals.setPoint) < lowSetPoint) ||
    (group === null && median(signals.probes.map((probe) => median(probe.median))) < lowSetPoint);
  return isLow ? settings.lowLimit.value : settings.mediumLimit.value;
}

/** A case kept under −10 °C is a low-temperature case, whatever its suction group is called. */
const lowSetPoint = -10;

/** One probe's last defrosts: not recovered at all, or far slower than its limit or its own earlier median. */
interface Slow {
  readonly probe: number;
  readonly from: number;
  readonly usual: Minutes;
  readonly now: Minutes;
  readonly failedShare: number;
  readonly slowShare: number;
}

/**
 * Slow and failed recovery: two of the last four defrosts failed to recover before the next, or took longer than
 * the limit and half as long again as the probe's own earlier median. Probes that share it make one finding.
 */
export function slowRecovery(signals: CircuitSignals, group: GroupSignals | null): Evidence[] {
  const windows = completeDefrosts(signals);
  const limit = recoveryLimit(signals, group);
  const slow = signals.circuit.probes.flatMap((_, probe) => {
    const seen = signals.usable[probe] ? judgeProbe(windows, probe, limit) : null;
    return seen === null ? [] : [seen];
  });
  if (slow.length === 0) return [];
  const usable = signals.usable.filter(Boolean).length;
  if (slow.length > 1 && 2 * slow.length > usable) return [asEvidence(signals, combined(slow), null, limit)];
  return slow.map((one) => asEvidence(signals, one, usable > 1 ? one.probe : null, limit));
}

function judgeProbe(windows: readonly DefrostWindow[], probe: number, limit: Minutes): Slow | null {
  const events = windows
    .map((window) => ({ at: window.from, ...window.probes[probe]! }))
    .filter((event) => Number.isFinite(event.before) && event.watchedMinutes > 0);
  if (events.length < settings.lastDefrosts.value) return null;
  const minutes = events.map(minutesToRecover);
  const last = events.slice(-settings.lastDefrosts.value);
  const change = levelChange(minutes);
  const usual = change === null ? median(minutes) : change.before;
  const isSlow = (value: Minutes) =>
    value > limit ||
    (value > settings.slowRatio.value * usual &&
      value > usual + 2 * settings.slowMinutes.value &&
      value > limit / 2);
  const failed = last.filter((event) => !isRecovered(event) && event.watchedMinutes > limit);
  const slow = last.filter((event) => isSlow(minutesToRecover(event)));
  if (failed.length < 2 && slow.length < 3) return null;
  const isBad = minutes.map((value, i) => isSlow(value) || !isRecovered(events[i]!));
  const lastGood = isBad.lastIndexOf(false);
  const first = change !== null && change.after > change.before ? change.at : lastGood + 1;
  return {
    probe,
    from: events[Math.min(first, events.length - 1)]!.at,
    usual,
    now: median(last.map(minutesToRecover)),
    failedShare: failed.length / last.length,
    slowShare: slow.length / last.length,
  };
}

function combined(slow: readonly Slow[]): Slow {
  const of = (pick: (one: Slow) => number) => median(slow.map(pick));
  return {
    probe: -1,
    from: Math.min(...slow.map((one) => one.from)),
    usual: of((one) => one.usual),
    now: of((one) => one.now),
    failedShare: of((one) => one.failedShare),
    slowShare: of((one) => one.slowShare),
  };
}

function asEvidence(signals: CircuitSignals, slow: Slow, probe: number | null, limit: Minutes): Evidence {
  const ratio = slow.now / slow.usual;
  return evidenceOf(signals, {
    shape: slow.failedShare >= 0.5 ? 'not-recovered' : 'slow',
    probe,
    from: slow.from,
    certainty:
      0.45 + 0.3 * slow.slowShare + 0.2 * slow.failedShare + (ratio > settings.slowRatio.value ? 0.1 : 0),
    measures: [
      measure('recovery', slow.now, 'min'),
      measure('usualRecovery', slow.usual, 'min'),
      measure('recoveryLimit', limit, 'min'),
      measure('failedShare', 100 * slow.failedShare, '%'),
    ],
    features: {
      recoveryRatio: ratio,
      limitRatio: slow.now / limit,
      failedShare: slow.failedShare,
      slowShare: slow.slowShare,
      recoveryRise: slow.now - slow.usual,
    },
  });
}
