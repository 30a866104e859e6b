import type { GuessedCircuit } from './guess-circuits.ts';
import type { GuessNote } from './guess-note.ts';
import { isSubsequence } from './owners.ts';
import { someNames } from './some-names.ts';
import type { RackGroup } from './suction-groups.ts';

export interface Membership {
  readonly groupOf: ReadonlyMap<string, string>;
  readonly notes: readonly GuessNote[];
  readonly questions: readonly string[];
}

/** Air below this belongs to a frozen circuit. Common practice, no source. */
export const frozenBelowCelsius = -10;

/** Which suction group feeds each circuit: the only one, the one its name says, or the one of its class. */
export function feedingGroups(
  groups: readonly RackGroup[],
  circuits: readonly GuessedCircuit[],
  airInCelsius: ReadonlyMap<string, number>,
): Membership {
  const groupOf = new Map<string, string>();
  const notes: GuessNote[] = [];
  const unsure: string[] = [];
  for (const circuit of circuits) {
    const { id } = circuit.circuit;
    const found = feederOf(circuit, groups, airInCelsius.get(id) ?? Number.NaN);
    if (found === null) {
      if (groups.length > 0) unsure.push(id);
      continue;
    }
    groupOf.set(id, found.group.id);
    notes.push({
      path: ['circuits', id, 'suctionGroup'],
      confidence: found.confidence,
      because: found.because,
    });
  }
  const questions =
    unsure.length === 0
      ? []
      : [`Which suction group feeds ${someNames(unsure)}: ${groups.map(({ id }) => id).join(' or ')}?`];
  return { groupOf, notes, questions };
}

interface Feeder {
  readonly group: RackGroup;
  readonly confidence: number;
  readonly because: string;
}

function feederOf(circuit: GuessedCircuit, groups: readonly RackGroup[], airCelsius: number): Feeder | null {
  if (groups.length === 1) {
    return { group: groups[0]!, confidence: 0.8, because: 'the export holds one suction group' };
  }
  const named = groups.filter((group) => namesGroup(circuit, group, groups));
  if (named.length === 1) {
    return { group: named[0]!, confidence: 0.9, because: 'its name carries that of the suction group' };
  }
  const rack = circuit.rack;
  const onRack = rack === null ? [] : groups.filter((group) => group.rack === rack);
  const candidates = onRack.length > 0 ? onRack : groups;
  if (onRack.length === 1) {
    return {
      group: onRack[0]!,
      confidence: 0.85,
      because: `its name says rack ${rack}, which has one suction group`,
    };
  }
  if (!Number.isFinite(airCelsius)) return null;
  const wanted = airCelsius < frozenBelowCelsius ? 'low' : 'medium';
  const ofClass = candidates.filter((group) => group.class === wanted);
  if (ofClass.length !== 1) return null;
  const kind = wanted === 'low' ? 'a frozen' : 'a chilled';
  return {
    group: ofClass[0]!,
    confidence: 0.75,
    because: `its air stands where ${kind} circuit's does, and this is the one ${wanted}-temperature group`,
  };
}

/**
 * Whether a circuit's name carries what tells a group from the others. A bare number does not (group 1 and
 * circuit 1 have nothing in common), a bare letter only where it begins a name (`A07`).
 */
function namesGroup(
  { group: circuit }: GuessedCircuit,
  group: RackGroup,
  groups: readonly RackGroup[],
): boolean {
  const telling = group.key.filter((word) => !groups.every((other) => other.key.includes(word)));
  if (!isSubsequence(group.key, circuit.key)) return false;
  const tokens = circuit.air[0]!.keyTokens;
  return telling.some((word) => {
    if (/^\d+$/.test(word)) return false;
    if (word.length > 1) return true;
    return tokens.some(
      (token, index) =>
        token.text === word && (token.mark === 'rack' || tokens[index + 1]?.from === token.to),
    );
  });
}
