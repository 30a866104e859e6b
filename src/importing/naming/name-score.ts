import { groupedBy } from '../points/grouped-by.ts';
import type { NameGroup } from './name-groups.ts';
import type { NamedColumn, Role } from './role.ts';

/** Most cases of one line-up that one control loop serves; more under one name are several circuits. */
const mostProbes = 8;

/** A circuit has as many of these as it has cases. */
const severalAtACircuit: ReadonlySet<Role> = new Set<Role>([
  'return-air',
  'coil-out',
  'product',
  'defrost-termination',
]);

/**
 * How well names hang together in one reading: most of it is that the circuits' other columns carry the same
 * names, then that circuits have the size of a line-up and their probes places of their own.
 */
export function scoreOf(
  groups: readonly NameGroup[],
  airCount: number,
  others: readonly NamedColumn[],
  keysOfOthers: readonly string[],
): number {
  const goodSize = groups.filter(({ air }) => air.length >= 2 && air.length <= mostProbes);
  const inGoodSize = goodSize.reduce((sum, { air }) => sum + air.length, 0);
  const distinctPlaces = groups.filter(
    ({ air }) => new Set(air.map((probe) => `${probe.column.role}${probe.position}`)).size === air.length,
  );
  const rolesAt = groupedBy(others.keys(), (index) => keysOfOthers[index]!);
  const roleTwice = groups.filter(({ id }) => {
    const roles = (rolesAt.get(id) ?? []).map((index) => others[index]!.role);
    const here = roles.filter((role) => !severalAtACircuit.has(role));
    return new Set(here).size < here.length;
  });
  const unnamed = groups.filter(({ key, stem }) => key.length === 0 && stem === null && groups.length > 1);
  const misplaced = groups.flatMap(({ air }) => air).filter((probe) => !probe.isPlace);
  const toldApart = groups.filter(
    ({ air }) => new Set(air.flatMap(({ ofOthers }) => ofOthers ?? [])).size > 1,
  );
  const tooLarge = groups.filter(({ air }) => air.length > mostProbes);
  return (
    1.5 * matchedShare(groups, keysOfOthers) +
    0.8 * share(inGoodSize, airCount) +
    0.5 * share(distinctPlaces.length, groups.length) -
    0.5 * share(roleTwice.length, groups.length) -
    share(misplaced.length, airCount) -
    share(toldApart.length, groups.length) -
    0.5 * share(unnamed.length, groups.length) -
    0.4 * share(tooLarge.length, groups.length) -
    0.1 * share(groups.length, airCount)
  );
}

/** Share of the circuits' other columns that carry the name of a group. */
export function matchedShare(groups: readonly NameGroup[], keysOfOthers: readonly string[]): number {
  const keys = new Set(groups.map(({ id }) => id));
  return share(keysOfOthers.filter((key) => keys.has(key)).length, keysOfOthers.length);
}

function share(count: number, of: number): number {
  return of === 0 ? 0 : count / of;
}
