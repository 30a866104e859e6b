import { median } from '../../maths/median.ts';
import { raisedLevel } from '../../signals/defrost/measure-probe.ts';
import type { CircuitSignals, ProbeDays, ProbeDefrost } from '../../signals/types.ts';
import { type Comparison, type Span, wholeDays } from './comparison.ts';
import { constancy } from './constancy.ts';
import { cycleLikeness } from './cycle-likeness.ts';
import { errorOfFew, errorOfMedian } from './error-of-median.ts';
import type { OffsetTable } from './offset-table.ts';
import { spill } from './spill.ts';

/** Defrosts that tell how an offset scatters; where those before the change do, one since tells what it is. */
const leastDefrosts = 3;
/** A cooling offset below this cannot be divided by (°F 1, domain practice). */
const leastOffset = 0.55;
/** Neighbours that cycle less than this do not show a shape that could be compared. */
const leastSwing = 0.5;

/**
 * What tells a section that is warm from a probe that lies, as named features. Each compares the probe with
 * its neighbours, and that comparison now with the same before the change; features that this log cannot give
 * are left out.
 *
 * `defrostOffsetRatio`: the offset late in defrost over the offset while cooling. A lying probe keeps its
 * offset (near 1), lost airflow keeps a part, ice turns its end colder than its neighbours (below 0).
 */
export function behaviour(
  signals: CircuitSignals,
  table: OffsetTable,
  probe: number,
  peers: readonly number[],
  compared: Comparison,
): { [feature: string]: number } {
  const features: { [feature: string]: number } = {};
  const put = (name: string, value: number): void => {
    if (Number.isFinite(value)) features[name] = value;
  };

  const cooling = shiftOver(signals, probe, peers, compared, (one) => one.before);
  const late = shiftOver(signals, probe, peers, compared, (one) => one.late);
  put('defrostsUsed', Math.min(cooling.count, late.count));
  if (cooling.isKnown && late.isKnown && Math.abs(cooling.shift) >= leastOffset) {
    const ratio = late.shift / cooling.shift;
    put('defrostOffsetRatio', ratio);
    put('defrostOffsetRatioError', Math.hypot(late.error, ratio * cooling.error) / Math.abs(cooling.shift));
    put('lateDefrostShift', late.shift);
    const rise = riseRatio(signals, probe, peers, compared);
    put('riseRatio', rise.ratio);
    if (late.count < leastDefrosts) put('riseRatioError', rise.error);
    Object.assign(features, constancy(signals, table, probe, peers, compared, cooling));
    Object.assign(features, spill(signals, probe, peers, compared, cooling.shift));
  }

  const { calendar } = signals.log;
  const days = { old: wholeDays(calendar, compared.old), now: wholeDays(calendar, compared.now) };
  const own = signals.probes[probe]!;
  const others = peers.map((peer) => signals.probes[peer]!);
  const settled = dayShift(own, others, days, (one) => one.median);
  if (Math.abs(settled) >= leastOffset) {
    const byDay = dayShift(own, others, days, (one) => one.day);
    const byNight = dayShift(own, others, days, (one) => one.night);
    put('dayNightRatio', (byDay - byNight) / settled);
  }
  const swing = ratioOverDays(own, others, days, (one) => one.swing);
  const othersCycle = Number.isNaN(swing.others) ? swing.othersBefore : swing.others;
  // A valve that regulates has no cycles; what swings there is the load, in which ice and a lie share alike.
  const cycles = othersCycle >= leastSwing && signals.circuit.valve?.quantity !== 'fraction';
  if (cycles) put('swingRatio', swing.ratio);
  if (!(cooling.shift > raisedLevel))
    put('recoveryRatio', ratioOverDays(own, others, days, (one) => one.recovery).ratio);

  if (cycles) {
    const likeness = cycleLikeness(signals, probe, peers, compared.now);
    // A valve that a false reading holds open makes no cycles: what is left is noise.
    if (likeness.othersSwing >= leastSwing) {
      put('phaseCorrelation', likeness.correlation);
      put('phaseLagMinutes', likeness.lagMinutes);
    }
  }
  return features;
}

interface Shift {
  readonly shift: number;
  readonly error: number;
  readonly count: number;
  readonly isKnown: boolean;
}

/** Change of (probe − median of neighbours) at one moment of the defrosts, with its standard error. */
function shiftOver(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
  compared: Comparison,
  pick: (defrost: ProbeDefrost) => number,
): Shift {
  const offsets = (span: Span): Float64Array =>
    Float64Array.from(
      defrostsIn(signals, span).map(
        (window) => pick(window.probes[probe]!) - median(peers.map((peer) => pick(window.probes[peer]!))),
      ),
    ).filter(Number.isFinite);
  const now = offsets(compared.now);
  const old = offsets(compared.old);
  const isUsualKnown = old.length >= leastDefrosts;
  const reference = isUsualKnown ? median(old) : 0;
  const error = now.length < leastDefrosts ? errorOfFew(now, old) : errorOfMedian(now);
  return {
    shift: median(now) - reference,
    error: Math.hypot(error, isUsualKnown ? errorOfMedian(old) : 0),
    count: now.length,
    isKnown: now.length >= (isUsualKnown ? 1 : leastDefrosts),
  };
}

function defrostsIn({ defrosts }: CircuitSignals, { from, to }: Span) {
  return defrosts.filter((window) => window.complete && window.from >= from && window.to <= to);
}

/** How far the probe rises in defrost against its neighbours, now over before (over 1 for a habit). */
function riseRatio(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
  compared: Comparison,
): { ratio: number; error: number } {
  const ratios = (span: Span): Float64Array =>
    Float64Array.from(
      defrostsIn(signals, span).map((window) => {
        const rise = (one: ProbeDefrost): number => one.peak - one.before;
        return rise(window.probes[probe]!) / median(peers.map((peer) => rise(window.probes[peer]!)));
      }),
    ).filter(Number.isFinite);
  const now = ratios(compared.now);
  const old = ratios(compared.old);
  const usual = median(old);
  const over = Number.isFinite(usual) && usual > 0.2 ? usual : 1;
  return { ratio: median(now) / over, error: errorOfFew(now, old) / over };
}

type DailySeries = (days: ProbeDays) => Float64Array;

function dayShift(own: ProbeDays, others: readonly ProbeDays[], days: Comparison, pick: DailySeries): number {
  const offset = (span: Span): number => {
    const offsets: number[] = [];
    for (let day = span.from; day < span.to; day++) {
      offsets.push(pick(own)[day]! - median(others.map((other) => pick(other)[day]!)));
    }
    return median(offsets);
  };
  const old = offset(days.old);
  return offset(days.now) - (Number.isFinite(old) ? old : 0);
}

function ratioOverDays(
  own: ProbeDays,
  others: readonly ProbeDays[],
  days: Comparison,
  pick: DailySeries,
): { ratio: number; others: number; othersBefore: number } {
  const middle = (probe: ProbeDays, span: Span): number => median(pick(probe).subarray(span.from, span.to));
  const middleOfOthers = (span: Span): number => median(others.map((other) => middle(other, span)));
  const othersNow = middleOfOthers(days.now);
  const othersBefore = middleOfOthers(days.old);
  const now = middle(own, days.now) / othersNow;
  const old = middle(own, days.old) / othersBefore;
  return { ratio: Number.isFinite(old) && old > 0 ? now / old : now, others: othersNow, othersBefore };
}
