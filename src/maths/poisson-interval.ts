/** Exact interval of a Poisson mean from one count (Garwood, Biometrika 28 (1936) 437). */
export function poissonInterval(count: number, confidence = 0.95): { low: number; high: number } {
  const tail = (1 - confidence) / 2;
  const low = count === 0 ? 0 : meanWhere((mean) => 1 - atMost(count - 1, mean) < tail, count);
  return { low, high: meanWhere((mean) => atMost(count, mean) > tail, count) };
}

function atMost(count: number, mean: number): number {
  let logTerm = -mean;
  let sum = Math.exp(logTerm);
  for (let k = 1; k <= count; k++) {
    logTerm += Math.log(mean / k);
    sum += Math.exp(logTerm);
  }
  return sum;
}

/** The mean up to which `holds`, by halving. */
function meanWhere(holds: (mean: number) => boolean, count: number): number {
  let low = 0;
  let high = 20 + count + 20 * Math.sqrt(count + 1);
  for (let round = 0; round < 100; round++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
