import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { type Grid, samplesIn, timeAt } from '../../model/grid.ts';
import type { CircuitSignals, DefrostWindow, Signals } from '../../signals/types.ts';
import type { Kelvin, Minutes } from '../../units/quantities.ts';
import { changeEvidence } from './change-evidence.ts';
import { leavesOwnDefrosts } from './leaving-own-defrosts.ts';
import { momentOfSwap } from './moment-of-swap.ts';

/** Share of another circuit's rise that a probe must make in that one's defrosts once it sits there. */
const leastForeignRise = 0.6;
/** … and how much nearer it must come to making all of it than it was before. */
const leastNearer = 0.25;
const leastWindows = 4;
const lateMinutes: Minutes = 20;
const beforeMinutes: Minutes = 60;

/**
 * Probes that went over to the defrosts of another circuit: from some day on they no longer rise as their own
 * neighbours do and rise with those of the other circuit. Two channels were exchanged between circuits. Each defrost is judged by itself,
 * since circuits may share some hours of their defrosts and not others; where they share all, the other end must show it.
 */
export function foreignDefrosts(
  signals: CircuitSignals,
  site: Signals,
  living: readonly number[],
): Evidence[] {
  const evidence: Evidence[] = [];
  for (const { probe, peers, day, host } of gone(signals, site, living)) {
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

/** Those of the probes that left their own defrosts which are found elsewhere; where none is, the one that left farthest if one came for it. */
function gone(signals: CircuitSignals, site: Signals, living: readonly number[]) {
  const left = leaving(signals, living);
  const found = left.flatMap((one) => {
    const host = hostOf(signals, site, one.probe, one.day);
    return host === null ? [] : [{ ...one, host }];
  });
  if (found.length > 0 || left.length === 0) return found;
  const farthest = left.reduce((a, b) => (b.off > a.off ? b : a));
  const host = cameFrom(signals, site, farthest.day);
  return host === null ? [] : [{ ...farthest, host }];
}

/** The probes that left their own defrosts, each with its neighbours. */
function leaving(signals: CircuitSignals, living: readonly number[]) {
  return living.flatMap((probe) => {
    const peers = living.filter((other) => other !== probe);
    const left = leavesOwnDefrosts(signals, probe, peers);
    return left === null ? [] : [{ probe, peers, ...left }];
  });
}

interface Host {
  readonly circuit: CircuitSignals;
  /** Share of its rise that the probe makes now, and how far that is from all of it. */
  readonly rise: number;
  readonly off: number;
}

interface Company {
  readonly rise: number;
  readonly off: number;
  /** Whether it had to be told from defrosts that the probe's own circuit has at the same time. */
  readonly isShared: boolean;
}

/** The other circuit in whose defrosts the probe rises since then and did not rise so before, or null. */
function hostOf(signals: CircuitSignals, site: Signals, probe: number, day: number): Host | null {
  let best: Host | null = null;
  for (const circuit of site.circuits) {
    if (circuit === signals) continue;
    const company = companyIn(circuit, signals, probe, day);
    if (company === null || company.rise < leastForeignRise) continue;
    if (best !== null && company.off >= best.off) continue;
    if (company.isShared && sentBack(circuit, signals, day) === null) continue;
    best = { circuit, ...company };
  }
  return best;
}

/** How a probe of `signals` rises in the defrosts of another circuit since `day`; null where no nearer to it than before. */
function companyIn(
  circuit: CircuitSignals,
  signals: CircuitSignals,
  probe: number,
  day: number,
): Company | null {
  const { grid, calendar } = signals.log;
  const { days } = calendar;
  const since = days[day]!.from;
  const until = days[Math.max(0, day - 1)]!.from;
  const alone = circuit.defrosts.filter((one) => one.complete && !touches(one, signals.defrosts));
  const aloneSince = alone.filter(({ from }) => from >= since).length;
  const isShared = aloneSince < leastWindows;
  const windows = isShared ? circuit.defrosts.filter(({ complete }) => complete) : alone;
  const { values } = signals.circuit.probes[probe]!.record;
  const shares = (chosen: readonly DefrostWindow[]): number[] =>
    chosen.map(
      (one) => riseIn(values, one, grid) / median(one.probes.map(({ late, before }) => late - before)),
    );
  const now = shares(windows.filter(({ from }) => from >= since)).filter(Number.isFinite);
  const before = shares(windows.filter(({ to }) => to <= until)).filter(Number.isFinite);
  if (now.length < leastWindows || before.length < leastWindows) return null;
  const offBy = (all: readonly number[]): number => median(all.map((one) => Math.abs(one - 1)));
  const off = offBy(now);
  return off <= offBy(before) - leastNearer ? { rise: median(now), off, isShared } : null;
}

/**
 * The circuit from which a probe came here by its own showing: the one that left in its place may find no hour of defrost over
 * there that its own circuit does not share.
 */
function cameFrom(signals: CircuitSignals, site: Signals, day: number): Host | null {
  for (const circuit of site.circuits) {
    if (circuit === signals) continue;
    const back = sentBack(circuit, signals, day);
    if (back !== null && !back.isShared) return { circuit, rise: back.rise, off: back.off };
  }
  return null;
}

/** How a probe of that circuit, which left its own defrosts within a day of `day`, rises in those of this one; or null. */
function sentBack(host: CircuitSignals, signals: CircuitSignals, day: number): Company | null {
  for (const { probe, day: left } of leaving(host, usableOf(host))) {
    if (Math.abs(left - day) > 1) continue;
    const company = companyIn(signals, host, probe, left);
    if (company !== null && company.rise >= leastForeignRise) return company;
  }
  return null;
}

function usableOf({ circuit, usable }: CircuitSignals): number[] {
  return circuit.probes.map((_, probe) => probe).filter((probe) => usable[probe]);
}

function touches(window: DefrostWindow, others: readonly DefrostWindow[]): boolean {
  return others.some((other) => other.from < window.to && other.to > window.from);
}

/** Middles of the end of a defrost and of the hour before: of a probe that only scatters the highest reading would rise too. */
function riseIn(values: Float64Array, { from, to }: DefrostWindow, grid: Grid): Kelvin {
  const late = Math.min(samplesIn(grid, lateMinutes), Math.ceil((to - from) / 2));
  const before = values.subarray(Math.max(0, from - samplesIn(grid, beforeMinutes)), from);
  return median(values.subarray(to - late, to)) - median(before);
}

function levelShift(signals: CircuitSignals, probe: number, peers: readonly number[], day: number): number {
  const offsets = signals.probes[probe]!.median.map(
    (value, d) => value - median(peers.map((peer) => signals.probes[peer]!.median[d]!)),
  );
  return median(offsets.subarray(day)) - median(offsets.subarray(0, Math.max(1, day - 1)));
}
