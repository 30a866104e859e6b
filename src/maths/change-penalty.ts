/** How many squared noise units a change must save: Schwarz's criterion, or its modification for change points. */
export type ChangePenalty = 'BIC' | 'MBIC';

/**
 * BIC: 2 ln n a change (its place and its mean). MBIC: 3 ln n, and ln of the length of each segment on its cost
 * (Zhang and Siegmund, Biometrics 63 (2007) 22). As in R's changepoint.
 */
export function penaltyFor(kind: ChangePenalty, n: number): number {
  return (kind === 'BIC' ? 2 : 3) * Math.log(n);
}

export function lengthCost(kind: ChangePenalty, length: number): number {
  return kind === 'MBIC' ? Math.log(length) : 0;
}
