/**
 * p-values adjusted so that rejecting those at most q keeps the expected share of false ones below q: Benjamini and
 * Hochberg, J. R. Stat. Soc. B 57 (1995) 289 (R: `p.adjust(…, 'BH')`). In the order given; NaN stays and is not counted.
 */
export function benjaminiHochberg(pValues: ArrayLike<number>): Float64Array {
  const adjusted = Float64Array.from(pValues);
  const descending = Array.from(pValues, (_, i) => i)
    .filter((i) => !Number.isNaN(pValues[i]!))
    .sort((a, b) => pValues[b]! - pValues[a]!);
  let smallest = 1;
  descending.forEach((i, place) => {
    smallest = Math.min(smallest, (pValues[i]! * descending.length) / (descending.length - place));
    adjusted[i] = smallest;
  });
  return adjusted;
}
