import { groupKey, type NameGroup, type NameGrouping, stemOf } from './name-groups.ts';
import { residualOf } from './residual.ts';
import type { NamedColumn } from './role.ts';

/** Brings set points, defrosts, valves … to the circuit whose name they carry. */
export function ownersByName(
  grouping: NameGrouping,
  others: readonly NamedColumn[],
): Map<NameGroup, NamedColumn[]> {
  const owners = new Map<NameGroup, NamedColumn[]>();
  for (const column of others) {
    const owner = ownerOf(column, grouping);
    if (owner !== null) owners.set(owner, [...(owners.get(owner) ?? []), column]);
  }
  return owners;
}

function ownerOf(column: NamedColumn, { groups, byFile }: NameGrouping): NameGroup | null {
  const stem = stemOf(column, byFile);
  const residual = residualOf(column);
  const exact = groups.find((group) => group.id === groupKey(stem, residual));
  if (exact !== undefined) return exact;
  const words = residual.map((token) => token.text);
  const near = groups.filter((group) => group.stem === stem);
  const holding = longest(near.filter((group) => group.key.length > 0 && isSubsequence(group.key, words)));
  if (holding.length === 1) return holding[0]!;
  const held = words.length === 0 ? [] : near.filter((group) => isSubsequence(words, group.key));
  if (held.length === 1) return held[0]!;
  if (near.length === 1 && groups.length === 1) return near[0]!;
  const telling = near.filter((group) => tellsApart(group, near, words));
  return telling.length === 1 ? telling[0]! : null;
}

/** Whether the words that tell a circuit from all others stand in the name. */
function tellsApart(group: NameGroup, all: readonly NameGroup[], words: readonly string[]): boolean {
  const own = group.key.filter((word) => !all.every((other) => other.key.includes(word)));
  return own.length > 0 && isSubsequence(own, words);
}

function longest(groups: readonly NameGroup[]): readonly NameGroup[] {
  const length = Math.max(...groups.map((group) => group.key.length));
  return groups.filter((group) => group.key.length === length);
}

export function isSubsequence(part: readonly string[], whole: readonly string[]): boolean {
  let at = 0;
  for (const word of whole) if (word === part[at]) at++;
  return at === part.length;
}
