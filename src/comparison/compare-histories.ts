import { circuitFigures, figureKey } from '../figures/circuit-figures.ts';
import { blocksADay, clockBlocks } from '../figures/clock-blocks.ts';
import { type Figure, figureMeanings } from '../figures/figure.ts';
import { groupFigures } from '../figures/group-figures.ts';
import { type MatchedChange, matchedChange } from '../figures/matched-change.ts';
import type { Signals } from '../signals/types.ts';

export interface ComparedFigure extends MatchedChange {
  readonly id: Figure['id'];
  readonly point: string | null;
  readonly unit: Figure['unit'];
  /** The interval keeps clear of no change, and the change is one that anybody cares for. */
  readonly changed: boolean;
}

export interface ComparedPlace {
  readonly kind: 'circuit' | 'suction-group';
  readonly id: string;
  /** Those that changed first, the largest change first. */
  readonly figures: readonly ComparedFigure[];
}

export interface ComparedHistories {
  /** The places with the largest changes first. */
  readonly places: readonly ComparedPlace[];
  /** Circuits that only one of the two has. */
  readonly onlyBefore: readonly string[];
  readonly onlyAfter: readonly string[];
}

/** Why two histories without a common place cannot be compared. */
export const nothingInCommon =
  'The two exports have no circuit and no suction group in common; a site file can give the columns of both the same names.';

interface Followed {
  readonly kind: ComparedPlace['kind'];
  readonly id: string;
  readonly figures: readonly Figure[];
}

/** Two histories of one site, figure by figure, at the same hours of the day and in the same phase. */
export function compareHistories(before: Signals, after: Signals): ComparedHistories {
  const earlier = followed(before);
  const later = followed(after);
  const twin = ({ kind, id }: Followed) => later.find((place) => place.kind === kind && place.id === id);
  const places = earlier.flatMap((place) => {
    const other = twin(place);
    return other === undefined ? [] : [comparedPlace(place, other)];
  });
  const isCircuit = ({ kind }: Followed) => kind === 'circuit';
  const missing = (some: readonly Followed[], others: readonly Followed[]) =>
    some
      .filter(isCircuit)
      .map(({ id }) => id)
      .filter((id) => !others.some((place) => isCircuit(place) && place.id === id));
  return {
    places: places.sort((a, b) => largest(b) - largest(a)),
    onlyBefore: missing(earlier, later),
    onlyAfter: missing(later, earlier),
  };
}

function followed({ log, circuits, groups }: Signals): Followed[] {
  const blocks = clockBlocks(log);
  return [
    ...circuits.map(
      (signals): Followed => ({
        kind: 'circuit',
        id: signals.circuit.id,
        figures: circuitFigures(signals, blocks),
      }),
    ),
    ...groups.map(
      ({ group }): Followed => ({
        kind: 'suction-group',
        id: group.id,
        figures: groupFigures(group, log, blocks),
      }),
    ),
  ];
}

function comparedPlace({ kind, id, figures }: Followed, other: Followed): ComparedPlace {
  const compared = figures.flatMap((figure) => {
    const twin = other.figures.find((each) => figureKey(each) === figureKey(figure));
    return twin === undefined ? [] : comparedFigure(figure, twin);
  });
  return { kind, id, figures: compared.sort((a, b) => weight(b) - weight(a)) };
}

/** Whole days on both sides, so that a block keeps its hours when one history is put behind the other. */
function comparedFigure({ id, point, unit, values }: Figure, later: Figure): ComparedFigure[] {
  const joined = new Float64Array(values.length + later.values.length);
  joined.set(values);
  joined.set(later.values, values.length);
  const change = matchedChange(
    joined,
    { from: 0, to: values.length - (values.length % blocksADay) },
    { from: values.length, to: joined.length },
  );
  if (change === null) return [];
  const isSure = change.low > 0 || change.high < 0;
  const changed = isSure && Math.abs(change.difference) >= figureMeanings[id].worthSaying;
  return [{ ...change, id, point, unit, changed }];
}

function weight({ id, difference, changed }: ComparedFigure): number {
  return (changed ? 1e6 : 0) + Math.abs(difference) / figureMeanings[id].worthSaying;
}

function largest({ figures }: ComparedPlace): number {
  return figures[0] === undefined ? 0 : weight(figures[0]);
}
