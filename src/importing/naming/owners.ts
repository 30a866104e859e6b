import { groupedBy } from '../points/grouped-by.ts';
import { groupKey, type NameGroup, type NameGrouping, stemOf } from './name-groups.ts';
import { namesOnly, residualOf } from './residual.ts';
import type { NamedColumn } from './role.ts';

/** Brings set points, defrosts, valves … to the circuit whose name they carry. */
export function ownersByName(
  grouping: NameGrouping,
  others: readonly NamedColumn[],
): Map<NameGroup, NamedColumn[]> {
  const finder = new OwnerFinder(grouping);
  const owners = new Map<NameGroup, NamedColumn[]>();
  for (const column of others) {
    const owner = finder.ownerOf(column);
    if (owner === null) continue;
    const owned = owners.get(owner);
    if (owned === undefined) owners.set(owner, [column]);
    else owned.push(column);
  }
  return owners;
}

/** Past this many circuits only equal names are compared: no store has them, and the rest would take long. */
const mostCompared = 400;

class OwnerFinder {
  readonly #byId: ReadonlyMap<string, NameGroup>;
  readonly #byStem: ReadonlyMap<string | null, readonly NameGroup[]>;
  readonly #telling = new Map<NameGroup, readonly string[]>();
  readonly #grouping: NameGrouping;

  constructor(grouping: NameGrouping) {
    this.#grouping = grouping;
    this.#byId = new Map(grouping.groups.map((group) => [group.id, group]));
    this.#byStem = groupedBy(grouping.groups, (group) => group.stem);
    for (const sharing of this.#byStem.values()) {
      const counts = new Map<string, number>();
      for (const { key } of sharing)
        for (const word of new Set(key)) counts.set(word, (counts.get(word) ?? 0) + 1);
      for (const group of sharing) {
        this.#telling.set(
          group,
          group.key.filter((word) => counts.get(word)! < sharing.length),
        );
      }
    }
  }

  ownerOf(column: NamedColumn): NameGroup | null {
    const stem = stemOf(column, this.#grouping.byFile);
    const residual = residualOf(column);
    const exact =
      this.#byId.get(groupKey(stem, residual)) ?? this.#byId.get(groupKey(stem, namesOnly(residual)));
    if (exact !== undefined) return exact;
    const near = this.#byStem.get(stem) ?? [];
    if (near.length > mostCompared) return null;
    const words = residual.map((token) => token.text);
    const holding = longest(near.filter(({ key }) => key.length > 0 && isSubsequence(key, words)));
    if (holding.length === 1) return holding[0]!;
    // `Meat 2 SP1` holds Meat 2 as it stands, and Meat 1 only with a gap.
    const unbroken = holding.filter(({ key }) => ` ${words.join(' ')} `.includes(` ${key.join(' ')} `));
    if (unbroken.length === 1) return unbroken[0]!;
    const held = words.length === 0 ? [] : near.filter(({ key }) => isSubsequence(words, key));
    if (held.length === 1) return held[0]!;
    if (near.length === 1 && this.#grouping.groups.length === 1) return near[0]!;
    const telling = near.filter((group) => this.#tellsApart(group, words));
    return telling.length === 1 ? telling[0]! : null;
  }

  /** Whether the words that tell a circuit from all others stand in the name. */
  #tellsApart(group: NameGroup, words: readonly string[]): boolean {
    const own = this.#telling.get(group)!;
    return own.length > 0 && isSubsequence(own, words);
  }
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
