import type { NameGroup } from './name-groups.ts';
import { byNaturalOrder } from './natural-order.ts';

/** Names made short by what all of them begin with (`Store 12/Rack A/`), and unique. */
export function circuitIds(groups: readonly NameGroup[]): Map<NameGroup, string> {
  const inOrder = [...groups].sort((a, b) => byNaturalOrder(a.id, b.id));
  const shared = sharedPath(inOrder.map((group) => group.name));
  const taken = new Set<string>();
  return new Map(inOrder.map((group) => [group, uniqueId(group.name.slice(shared).trim(), taken)] as const));
}

/** How long the path is with which all names begin; 0 for a single name. */
export function sharedPath(names: readonly string[]): number {
  const [first, ...rest] = names;
  if (first === undefined || rest.length === 0) return 0;
  let shared = 0;
  for (let at = 0; at < first.length; at++) {
    if (!rest.every((name) => name[at] === first[at])) break;
    if (/[/\\|:>]/.test(first[at]!)) shared = at + 1;
  }
  return shared;
}

function uniqueId(wanted: string, taken: Set<string>): string {
  let id = wanted;
  for (let number = 2; taken.has(id); number++) id = `${wanted} (${number})`;
  taken.add(id);
  return id;
}
