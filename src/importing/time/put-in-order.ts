/** How the readings of one sequence were put into time order. */
export interface Ordering {
  /** Positions of the file's order in time order, or null where they stood in order already. */
  readonly order: Int32Array | null;
  /** Steps back in time, in the direction in which the file runs. */
  readonly stepsBack: number;
  readonly firstStepBack: number;
  readonly newestFirst: boolean;
}

const none: ReadonlySet<number> = new Set();

/**
 * The order by time; readings of equal time keep the order of the file, save that those at `moved`, whose time was
 * put forward over an hour that never comes, stand before the others. Steps to and from them are no steps back.
 */
export function orderByTime(times: Float64Array, moved: ReadonlySet<number> = none): Ordering {
  let up = 0;
  let down = 0;
  let firstDown = -1;
  let firstUp = -1;
  for (let index = 1; index < times.length; index++) {
    if (times[index]! > times[index - 1]!) {
      up++;
      if (firstUp < 0) firstUp = index;
    } else if (times[index]! < times[index - 1]!) {
      down++;
      if (firstDown < 0) firstDown = index;
    }
  }
  const newestFirst = down > up;
  const against = newestFirst ? up : down;
  const stepsBack = against - stepsBackBesides(times, moved, newestFirst);
  const firstStepBack = newestFirst ? firstUp : firstDown;
  if (down === 0 && moved.size === 0) return { order: null, stepsBack, firstStepBack, newestFirst };
  const order = Int32Array.from(times, (_, index) => index);
  if (newestFirst) order.reverse();
  const rank = (index: number): number => (moved.has(index) ? 0 : 1);
  order.sort((a, b) => times[a]! - times[b]! || (moved.size > 0 ? rank(a) - rank(b) : 0) || a - b);
  return { order, stepsBack, firstStepBack, newestFirst };
}

/** Steps back between a moved reading and one that was not. */
function stepsBackBesides(times: Float64Array, moved: ReadonlySet<number>, newestFirst: boolean): number {
  let steps = 0;
  const isBack = (from: number): boolean =>
    newestFirst ? times[from + 1]! > times[from]! : times[from + 1]! < times[from]!;
  for (const index of moved) {
    if (index > 0 && !moved.has(index - 1) && isBack(index - 1)) steps++;
    if (index + 1 < times.length && !moved.has(index + 1) && isBack(index)) steps++;
  }
  return steps;
}

export function inOrder(values: Float64Array, order: Int32Array): Float64Array {
  const sorted = new Float64Array(order.length);
  for (let at = 0; at < order.length; at++) sorted[at] = values[order[at]!]!;
  return sorted;
}

/** Usual step of ascending times: the median of up to 400 of them; NaN for fewer than two. */
export function usualStep(times: Float64Array): number {
  const steps: number[] = [];
  const stride = Math.max(1, Math.floor(times.length / 400));
  for (let at = 1; at < times.length; at += stride) {
    const step = Math.abs(times[at]! - times[at - 1]!);
    if (step > 0) steps.push(step);
  }
  steps.sort((a, b) => a - b);
  return steps.length === 0 ? Number.NaN : steps[steps.length >> 1]!;
}

const farDays = 300 * 86_400_000;

/** True where times ascend without repeats and without a gap of most of a year: nothing to put in order. */
export function isOrderly(times: Float64Array): boolean {
  let before = Number.NEGATIVE_INFINITY;
  for (let at = 0; at < times.length; at++) {
    const time = times[at]!;
    if (!(time > before) || (at > 0 && time - before >= farDays)) return false;
    before = time;
  }
  return true;
}

/**
 * Ascending times [from, to) that belong together: everything but small groups that lie most of a year away,
 * as a logger writes after it lost its clock.
 */
export function plausibleSpan(times: Float64Array): { from: number; to: number } {
  let from = 0;
  let to = times.length;
  const few = Math.max(1, Math.floor(times.length * 0.05));
  for (let at = 1; at < times.length; at++) {
    if (times[at]! - times[at - 1]! < farDays) continue;
    if (at <= few) from = at;
    else if (times.length - at <= few && to === times.length) to = at;
  }
  return { from, to };
}
