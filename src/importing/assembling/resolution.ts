const valuesRead = 4000;
const stepsThatMustFit = 0.98;

/**
 * The step in which a column is logged (0.1, 0.5, 1 …), from its values as written: the smallest difference
 * between neighbouring distinct values, if nearly all differences are whole multiples of it; 0 when it cannot
 * be told.
 */
export function resolutionOf(values: Float64Array): number {
  const stride = Math.max(1, Math.floor(values.length / valuesRead));
  const seen = new Set<number>();
  for (let index = 0; index < values.length; index += stride) {
    const value = values[index]!;
    if (Number.isFinite(value)) seen.add(value);
  }
  if (seen.size < 3) return 0;
  const sorted = Float64Array.from(seen).sort();
  const differences: number[] = [];
  for (let index = 1; index < sorted.length; index++) differences.push(sorted[index]! - sorted[index - 1]!);
  const largest = Math.max(Math.abs(sorted[0]!), Math.abs(sorted.at(-1)!));
  const step = Math.min(...differences.filter((difference) => difference > largest * 1e-9));
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
