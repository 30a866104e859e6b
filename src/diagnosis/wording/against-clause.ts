import type { Evidence } from '../../model/evidence.ts';

/** Names of two measures, what is and what is due or usual, and how their values are written. */
export type Pair = readonly [now: string, due: string, written: (value: number) => string];

/** ` (66.6 psig against 54.2 psig)` of the first pair of which both are known; nothing where none is. */
export function againstClause({ measures }: Evidence, pairs: readonly Pair[]): string {
  const value = (name: string) => measures.find((one) => one.name === name)?.value;
  for (const [now, due, written] of pairs) {
    const [size, other] = [value(now), value(due)];
    if (size !== undefined && other !== undefined) return ` (${written(size)} against ${written(other)})`;
  }
  return '';
}
