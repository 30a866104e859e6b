import { spreadSample } from '../points/spread-sample.ts';

const valuesRead = 2000;
const stepsThatMustFit = 0.98;

/**
 * The step in which a column is logged (0.1, 0.5, 1 …), from its values as written: the smallest difference
 * between neighbouring distinct values, if nearly all differences are whole multiples of it; 0 when it cannot
 * be told.
 */
export function resolutionOf(values: Float64Array): number {
  const sorted = distinctSorted(values);
  if (sorted.length < 3) return 0;
  const differences = sorted.subarray(1).map((value, index) => value - sorted[index]!);
  const largest = Math.max(Math.abs(sorted[0]!), Math.abs(sorted.at(-1)!));
  const step = differences.reduce(
    (least, difference) => (difference > largest * 1e-9 ? Math.min(least, difference) : least),
    Number.POSITIVE_INFINITY,
  );
  const fitting = differences.filter((difference) => {
    const multiple = difference / step;
    return Math.abs(multiple - Math.round(multiple)) < 0.05;
  });
  return fitting.length >= differences.length * stepsThatMustFit ? roundedStep(step) : 0;
}

/** 0.09999999999999787 is 0.1. */
function roundedStep(step: number): number {
  return Number(step.toPrecision(6));
}

/** A spread sample of the values, each once, ascending. */
function distinctSorted(values: Float64Array): Float64Array {
  const sorted = spreadSample(values, valuesRead).sort();
  let kept = 0;
  for (let index = 0; index < sorted.length; index++) {
    if (kept === 0 || sorted[index] !== sorted[kept - 1]) sorted[kept++] = sorted[index]!;
  }
  return sorted.subarray(0, kept);
}
