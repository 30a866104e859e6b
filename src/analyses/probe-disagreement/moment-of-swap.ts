import { median } from '../../maths/median.ts';
import type { CircuitSignals } from '../../signals/types.ts';

const referenceDays = 3;
/** Samples of a few days stand for all of them where a reference is chosen. */
const mostSamples = 500;

/** A probe to be held against, and how far from it the other one usually stands. */
interface Reference {
  readonly values: Float64Array;
  readonly offset: number;
}

/**
 * The sample from which a probe keeps company with the probes of another circuit: the cut between the days `first` and
 * `last` with the least sum of distances from its own likest neighbour before it and from the likest probe over there
 * after it. Cycles and defrosts of both circuits count, so it is good to some samples.
 */
export function momentOfSwap(
  signals: CircuitSignals,
  probe: number,
  neighbours: readonly number[],
  host: CircuitSignals,
  first: number,
  last: number,
): number {
  const { days } = signals.log.calendar;
  const { values } = signals.circuit.probes[probe]!.record;
  const from = days[first]!.from;
  const to = days[last]!.to;
  const before = days[Math.max(0, first - referenceDays)]!.from;
  const after = days[Math.min(days.length - 1, last + referenceDays)]!.to;
  const own = likest(
    values,
    neighbours.map((one) => signals.circuit.probes[one]!.record.values),
    before === from ? { from, to: days[first]!.to } : { from: before, to: from },
  );
  const there = likest(
    values,
    host.circuit.probes.filter((_, i) => host.usable[i]).map(({ record }) => record.values),
    after === to ? { from: days[last]!.from, to } : { from: to, to: after },
  );
  return bestCut(values, own, there, from, to);
}

/** Of some probes the one that moves most as `values` do. */
function likest(
  values: Float64Array,
  others: readonly Float64Array[],
  { from, to }: { readonly from: number; readonly to: number },
): Reference {
  const stride = Math.max(1, Math.floor((to - from) / mostSamples));
  let best: Reference = { values: others[0]!, offset: 0 };
  let least = Number.POSITIVE_INFINITY;
  for (const other of others) {
    const apart: number[] = [];
    for (let i = from; i < to; i += stride) {
      const difference = values[i]! - other[i]!;
      if (!Number.isNaN(difference)) apart.push(difference);
    }
    const offset = median(apart);
    const distance = median(apart.map((one) => Math.abs(one - offset)));
    if (distance < least) {
      least = distance;
      best = { values: other, offset };
    }
  }
  return best;
}

function bestCut(values: Float64Array, own: Reference, there: Reference, from: number, to: number): number {
  const distance = ({ values: other, offset }: Reference, i: number): number =>
    Math.abs(values[i]! - other[i]! - offset) || 0;
  let cost = 0;
  let least = 0;
  let at = from;
  for (let i = from; i < to; i++) {
    cost += distance(own, i) - distance(there, i);
    if (cost < least) {
      least = cost;
      at = i + 1;
    }
  }
  return at;
}
