import { clearRamp } from '../../maths/fit-ramp.ts';
import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { timeAt } from '../../model/grid.ts';
import type { CircuitSignals, DefrostWindow, Signals } from '../../signals/types.ts';
import { changeEvidence } from './change-evidence.ts';
import { momentOfSwap } from './moment-of-swap.ts';

/** Share of its neighbours' rise that a probe still makes in its own defrosts when it sits elsewhere. */
const mostOwnRise = 0.45;
/** Share of another circuit's rise that it must make in that one's defrosts. */
const leastForeignRise = 0.6;
const leastWindows = 4;
const clarity = { leastSize: 0.45, leastScales: 4, leastScale: 0.05, leastExplained: 0.6 };

/**
 * Probes that went over to the defrosts of another circuit: from some day on they no longer rise with their own
 * neighbours and rise with those of the other circuit. Two channels were exchanged between circuits.
 */
export function foreignDefrosts(
  signals: CircuitSignals,
  site: Signals,
  living: readonly number[],
): Evidence[] {
  const evidence: Evidence[] = [];
  for (const probe of living) {
    const peers = living.filter((other) => other !== probe);
    const day = dayOfLosingOwn(signals, probe, peers);
    if (day === null) continue;
    const since = signals.log.calendar.days[day]!.from;
    const host = hostOf(signals, site, probe, since);
    if (host === null) continue;
    const at = momentOfSwap(signals, probe, peers, host.circuit, Math.max(0, day - 2), day);
    evidence.push({
      ...changeEvidence(signals, probe, peers, {
        shape: 'swapped',
        onset: timeAt(signals.log.grid, at),
        end: null,
        certainty: 0.9,
        shift: levelShift(signals, probe, peers, day),
        error: 0.3,
        features: { probes: living.length, foreignRise: host.rise },
      }),
      points: [signals.circuit.probes[probe]!.point, ...host.circuit.circuit.probes.map((one) => one.point)],
    });
  }
  return evidence;
}

/** First whole day on which the probe's daily defrost rise has fallen away from its neighbours', or null. */
function dayOfLosingOwn(signals: CircuitSignals, probe: number, peers: readonly number[]): number | null {
  const rise = (one: number, day: number): number =>
    signals.probes[one]!.peak[day]! - signals.probes[one]!.median[day]!;
  const ratios = Float64Array.from(signals.log.calendar.days, (_, day) => {
    const others = median(peers.map((peer) => rise(peer, day)));
    return others > 1 ? rise(probe, day) / others : Number.NaN;
  });
  const ramp = clearRamp(
    ratios.map((_, day) => day),
    ratios,
    clarity,
  );
  if (ramp === null || ramp.end - ramp.start > 2) return null;
  return ramp.after <= mostOwnRise && ramp.before > ramp.after ? ramp.end : null;
}

/** The other circuit in whose defrosts (apart from the own ones) the probe rises since then, or null. */
function hostOf(
  signals: CircuitSignals,
  site: Signals,
  probe: number,
  since: number,
): { circuit: CircuitSignals; rise: number } | null {
  const { values } = signals.circuit.probes[probe]!.record;
  let best: { circuit: CircuitSignals; rise: number } | null = null;
  for (const circuit of site.circuits) {
    if (circuit === signals) continue;
    const windows = circuit.defrosts.filter(
      (window) => window.complete && window.from >= since && !touches(window, signals.defrosts),
    );
    if (windows.length < leastWindows) continue;
    const rise = median(
      windows.map((window) => {
        const usual = median(window.probes.map((one) => one.peak - one.before));
        return (highest(values, window) - values[window.from]!) / usual;
      }),
    );
    if (rise >= leastForeignRise && (best === null || rise > best.rise)) best = { circuit, rise };
  }
  return best;
}

function touches(window: DefrostWindow, others: readonly DefrostWindow[]): boolean {
  return others.some((other) => other.from < window.to && other.to > window.from);
}

function highest(values: Float64Array, { from, to }: DefrostWindow): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let i = from; i < to; i++) if (values[i]! > most) most = values[i]!;
  return most;
}

function levelShift(signals: CircuitSignals, probe: number, peers: readonly number[], day: number): number {
  const offsets = signals.probes[probe]!.median.map(
    (value, d) => value - median(peers.map((peer) => signals.probes[peer]!.median[d]!)),
  );
  return median(offsets.subarray(day)) - median(offsets.subarray(0, Math.max(1, day - 1)));
}
