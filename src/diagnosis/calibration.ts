/**
 * Confidence is the probability that the trouble a finding describes is really there. An analysis gives a raw
 * certainty; this table turns it into the share of such evidence that was true on the tuning seeds of
 * `npm run evaluate` (docs/evaluation.md has the reliability table), straight lines between the points.
 */
const table: readonly { readonly certainty: number; readonly probability: number }[] = [
  { certainty: 0, probability: 0.05 },
  { certainty: 0.3, probability: 0.4 },
  { certainty: 0.5, probability: 0.65 },
  { certainty: 0.7, probability: 0.8 },
  { certainty: 0.85, probability: 0.89 },
  { certainty: 1, probability: 0.96 },
];

export function confidenceFrom(certainty: number): number {
  const held = Math.max(0, Math.min(1, certainty));
  const upper = table.find((point) => point.certainty >= held) ?? table.at(-1)!;
  const lower = table[Math.max(0, table.indexOf(upper) - 1)]!;
  if (upper === lower) return upper.probability;
  const share = (held - lower.certainty) / (upper.certainty - lower.certainty);
  return lower.probability + share * (upper.probability - lower.probability);
}

/** Independent views of one trouble strengthen each other: 1 − Π (1 − certainty), the second and later at half. */
export function combinedCertainty(certainties: readonly number[]): number {
  const ordered = [...certainties].sort((a, b) => b - a);
  const doubt = ordered.reduce((left, certainty, i) => left * (1 - certainty * (i === 0 ? 1 : 0.5)), 1);
  return 1 - doubt;
}
