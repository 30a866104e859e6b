/** A straight map from what is measured to where it is drawn. */
export type Scale = (value: number) => number;

export interface Domain {
  readonly low: number;
  readonly high: number;
}

export function linearScale({ low, high }: Domain, start: number, end: number): Scale {
  const factor = (end - start) / (high - low || 1);
  return (value) => start + (value - low) * factor;
}

/** Round steps (1, 2 or 5 times a power of ten): those whose number comes nearest to `wanted` ticks. */
export function valueTicks({ low, high }: Domain, wanted: number): readonly number[] {
  const rough = (high - low) / Math.max(1, wanted);
  if (!(rough > 0)) return [low];
  const power = 10 ** Math.floor(Math.log10(rough));
  const steps = [1, 2, 5, 10].map((factor) => factor * power);
  const off = (step: number): number => Math.abs(Math.log(step / rough));
  const step = steps.reduce((nearest, each) => (off(each) < off(nearest) ? each : nearest));
  const ticks: number[] = [];
  for (let n = Math.ceil(low / step); n * step <= high + step * 1e-9; n++) {
    ticks.push(Number((n * step).toPrecision(12)));
  }
  return ticks;
}

/** Lowest and highest known value with a little room, at least `least` apart; null when nothing is known. */
export function domainOf(
  lists: readonly (readonly (number | null)[])[],
  least: number,
  room = 0.06,
): Domain | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const list of lists) {
    for (const value of list) {
      if (value === null || !Number.isFinite(value)) continue;
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
  }
  if (low > high) return null;
  const middle = (low + high) / 2;
  const half = Math.max(high - low, least) / 2;
  return { low: middle - half * (1 + room), high: middle + half * (1 + room) };
}
