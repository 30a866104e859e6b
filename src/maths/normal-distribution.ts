/** Complementary error function to double precision: Taylor series below 2.5, Lentz's continued fraction above. */
function complementaryErrorFunction(x: number): number {
  if (x < 0) return 2 - complementaryErrorFunction(-x);
  if (x < 2.5) {
    let term = x;
    let sum = x;
    for (let n = 1; Math.abs(term) > 1e-17 * Math.abs(sum); n++) {
      term *= (2 * x * x) / (2 * n + 1);
      sum += term;
    }
    return 1 - (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum;
  }
  let fraction = 0;
  for (let n = 120; n >= 1; n--) fraction = n / 2 / (x + fraction);
  return Math.exp(-x * x) / Math.sqrt(Math.PI) / (x + fraction);
}

/** Φ(z), relative error below 1e-11 (Abramowitz and Stegun 7.1.6 and 7.1.14). NaN for NaN. */
export function normalProbability(z: number): number {
  return Number.isNaN(z) ? Number.NaN : complementaryErrorFunction(-z / Math.SQRT2) / 2;
}

/** 1 − Φ(z), without loss of digits for large z. */
export function normalUpperTail(z: number): number {
  return normalProbability(-z);
}

/**
 * Φ⁻¹(p): the start of Abramowitz and Stegun 26.2.23 (error 4.5e-4), then Halley's method on `normalProbability`.
 * −∞ and ∞ at 0 and 1, NaN outside.
 */
export function normalQuantile(probability: number): number {
  if (!(probability >= 0 && probability <= 1)) return Number.NaN;
  if (probability === 0) return Number.NEGATIVE_INFINITY;
  if (probability === 1) return Number.POSITIVE_INFINITY;
  if (probability > 0.5) return -normalQuantile(1 - probability);
  const t = Math.sqrt(-2 * Math.log(probability));
  let z =
    (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))) - t;
  for (let round = 0; round < 3; round++) {
    const error = (normalProbability(z) - probability) * Math.sqrt(2 * Math.PI) * Math.exp((z * z) / 2);
    z -= error / (1 + (z * error) / 2);
  }
  return z;
}
