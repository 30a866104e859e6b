import type { NameGroup } from './name-groups.ts';
import { isSubsequence } from './owners.ts';
import { residualOf } from './residual.ts';
import type { NamedColumn } from './role.ts';

/** Role guesses up to this say that neither name nor values told anything. */
const toldNothing = 0.4;
/** Past this many comparisons no store is meant. */
const mostCompared = 200_000;

/**
 * Temperatures, states and shares that carry the name of a circuit and were read as nothing: a set point or a defrost may
 * be among them, in letters that nobody knows.
 */
export function unreadColumns(
  columns: readonly NamedColumn[],
  groups: readonly NameGroup[],
  used: ReadonlySet<NamedColumn['point']>,
): readonly NamedColumn[] {
  const named = groups.filter(({ key }) => key.some((word) => !/^\d+$/.test(word)) || key.length > 1);
  const unread = columns.filter(
    ({ role, confidence, kind, facts, point }) =>
      role === 'other' &&
      confidence <= toldNothing &&
      (kind === 'temperature' || kind === 'status' || kind === 'percent') &&
      facts.readings > 0 &&
      !used.has(point),
  );
  if (named.length * unread.length > mostCompared) return [];
  return unread.filter((column) => {
    const words = residualOf(column).map(({ text }) => text);
    return named.some(({ key }) => key.length < words.length && isSubsequence(key, words));
  });
}
