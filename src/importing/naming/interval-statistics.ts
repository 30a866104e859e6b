import { groupedBy } from '../points/grouped-by.ts';
import { type Token, textOf } from './tokens.ts';

/**
 * `Air 1 avg`, `Air 1 min`, `Air 1 max`: what one point did within each interval. The mean is its reading; least and
 * greatest are no points of their own. Only where most columns are written so: an average beside its probes is another
 * thing.
 */
export function intervalStatistics(all: readonly (readonly Token[])[]): {
  readonly tokens: readonly (readonly Token[])[];
  readonly extremes: ReadonlySet<number>;
} {
  const named = all.flatMap((tokens, index) => {
    const last = tokens.at(-1);
    return last?.meaning === 'average' || last?.meaning === 'extreme'
      ? [{ index, meaning: last.meaning, key: textOf(tokens.slice(0, -1)) }]
      : [];
  });
  const together = [...groupedBy(named, ({ key }) => key).values()].filter(
    (group) =>
      group.filter(({ meaning }) => meaning === 'average').length === 1 &&
      group.some(({ meaning }) => meaning === 'extreme'),
  );
  const members = together.flat();
  if (members.length < leastShare * all.length) return { tokens: all, extremes: new Set() };
  const means = new Set(members.filter(({ meaning }) => meaning === 'average').map(({ index }) => index));
  return {
    tokens: all.map((tokens, index) => (means.has(index) ? tokens.slice(0, -1) : tokens)),
    extremes: new Set(members.filter(({ meaning }) => meaning === 'extreme').map(({ index }) => index)),
  };
}

const leastShare = 0.5;
