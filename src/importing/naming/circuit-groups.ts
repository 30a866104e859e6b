import { writtenName } from './circuit-name.ts';
import { clustersOf, coherence, movesTogether } from './clusters.ts';
import type { Movements } from './movements.ts';
import { byValuesOnly, groupByName, groupKey, type NameGroup, type NameGrouping } from './name-groups.ts';
import { byNaturalOrder } from './natural-order.ts';
import { namesOnly, type ResidualToken, residualOf } from './residual.ts';
import type { NamedColumn } from './role.ts';
import { textOf } from './tokens.ts';

export interface CircuitGroups extends NameGrouping {
  /** 0 to 1. */
  readonly confidence: number;
  readonly byBehaviour: boolean;
  /** Columns that look like air by their values alone and belong to no circuit. */
  readonly leftOver: readonly NamedColumn[];
}

/** Below this the names do not hang together; see the score of a grouping. */
const namesTell = 1;
/** From here on the other columns of the circuits carry the same names. */
const namesMatch = 2;
/** Scores of names that fit wholly, with and without other columns of the circuits to compare. */
const fullScore = { withOthers: 2.6, airAlone: 1.25 };

/**
 * The air columns of each circuit: by their names where those hang together, else by which columns move
 * together, else each column for itself.
 */
export function circuitGroups(
  air: readonly NamedColumn[],
  others: readonly NamedColumn[],
  movements: Movements,
): CircuitGroups {
  const byName = groupByName(air, others);
  if (air.length > 2 && (byName.score < namesTell || (byName.score < namesMatch && isFlat(air)))) {
    const clusters = clustersOf([...air].sort(byPointName), movements);
    const clustered = clusters.filter((members) => members.length > 1).flat().length;
    const namesAreWeaker = byName.score < namesTell ? clustered > 0 : clusters.length > 1;
    if (namesAreWeaker && clustered >= air.length / 2) return fromClusters(clusters, movements);
  }
  const { kept, leftOver } = withoutStrays(byName);
  const full = others.length > 0 ? fullScore.withOthers : fullScore.airAlone;
  const confidence = Math.min(0.99, Math.max(0.2, byName.score / full));
  return { ...byName, groups: kept, confidence, byBehaviour: false, leftOver };
}

/** Names that only count the columns: the same words in all, and one number or letter. */
function isFlat(air: readonly NamedColumn[]): boolean {
  const residuals = air.map((column) => residualOf(column).map((token) => token.text));
  const words = (texts: readonly string[]): string => texts.filter((text) => !isShort(text)).join(' ');
  return residuals.every(
    (texts) => words(texts) === words(residuals[0]!) && texts.filter(isShort).length <= 1,
  );
}

function isShort(text: string): boolean {
  return text.length === 1 || /^\d+$/.test(text);
}

function fromClusters(clusters: readonly NamedColumn[][], movements: Movements): CircuitGroups {
  const strays = clusters.filter((members) => members.length === 1 && isAirByValuesOnly(members[0]!));
  const kept = clusters.filter((members) => !strays.includes(members));
  const names = sharedNames(kept);
  const groups = kept.map((members, index): NameGroup => {
    const keyTokens = names === null ? [] : names[index]!;
    const own = members.length > 1 ? `Circuit ${index + 1}` : members[0]!.point.name;
    const name = keyTokens.length > 0 ? writtenName(members[0]!, keyTokens) : own;
    return {
      id: names === null ? name : groupKey(null, keyTokens),
      key: keyTokens.map(({ text }) => text),
      stem: null,
      name,
      air: members.map((column) => ({
        column,
        position: column.point.name,
        isPlace: true,
        keyTokens,
        ofOthers: null,
      })),
    };
  });
  const several = clusters.filter((members) => members.length > 1);
  const strength = several.reduce((sum, members) => sum + coherence(members, movements), 0) / several.length;
  return {
    groups,
    byFile: false,
    score: 0,
    because: `they warm and cool together (correlation ${strength.toFixed(2)})`,
    confidence: Math.min(0.75, strength * 0.8),
    byBehaviour: true,
    leftOver: strays.flat(),
  };
}

/** What the names of each cluster have in common, where that tells the clusters apart; else null. */
function sharedNames(clusters: readonly (readonly NamedColumn[])[]): (readonly ResidualToken[])[] | null {
  const names = clusters.map(([first, ...rest]) => {
    const others = rest.map((column) => new Set(residualOf(column).map(({ text }) => text)));
    return namesOnly(residualOf(first!)).filter(({ text }) => others.every((texts) => texts.has(text)));
  });
  const texts = new Set(names.map(textOf));
  return texts.size === clusters.length && !texts.has('') ? names : null;
}

function isAirByValuesOnly(column: NamedColumn): boolean {
  return column.confidence <= byValuesOnly;
}

/**
 * A column that is air only by its values, alone under its name among well-named circuits, is no circuit; nor is
 * a name under which nothing was ever read.
 */
function withoutStrays(grouping: NameGrouping): { kept: NameGroup[]; leftOver: NamedColumn[] } {
  const reads = ({ air }: NameGroup): boolean => air.some((probe) => probe.column.facts.readings > 0);
  const isStray = ({ air }: NameGroup): boolean => air.length === 1 && isAirByValuesOnly(air[0]!.column);
  const strays = grouping.groups.filter(isStray);
  if (grouping.score < namesTell || strays.length > grouping.groups.length / 2) {
    return { kept: grouping.groups.filter(reads), leftOver: [] };
  }
  return {
    kept: grouping.groups.filter((group) => !isStray(group) && reads(group)),
    leftOver: strays.flatMap(({ air }) => air.map((probe) => probe.column)),
  };
}

/** Whether no two probes of a circuit move together, though its name says that they are neighbours. */
export function movesApart(group: NameGroup, movements: Movements): boolean {
  const { air } = group;
  if (air.length < 2) return false;
  return air.every(({ column: a }, index) =>
    air.slice(index + 1).every(({ column: b }) => movements.together(a.point, b.point) < movesTogether / 2),
  );
}

function byPointName(a: NamedColumn, b: NamedColumn): number {
  return byNaturalOrder(a.point.name, b.point.name);
}
