import type { SiteCircuit } from '../site-file/site-file.ts';
import type { NameGroup, PlacedProbe } from './name-groups.ts';
import { byNaturalOrder } from './natural-order.ts';
import type { NamedColumn, Role } from './role.ts';

/** The entry of the site file for one circuit; of several columns for one place the surest. */
export function circuitOf(group: NameGroup, owned: readonly NamedColumn[], id: string): SiteCircuit {
  const names = (role: Role): string[] =>
    owned
      .filter((column) => column.role === role)
      .map((column) => column.point.name)
      .sort(byNaturalOrder);
  const list = (key: 'returnAir' | 'coilOut' | 'product' | 'defrostTermination', role: Role) =>
    names(role).length === 0 ? {} : { [key]: names(role) };
  const surest = (role: Role): string | undefined => {
    const best = Math.max(
      ...owned.filter((column) => column.role === role).map(({ confidence }) => confidence),
    );
    return names(role).find((name) =>
      owned.some((column) => column.point.name === name && column.confidence === best),
    );
  };
  const setPoint = surest('set-point');
  const valve = surest('valve');
  const superheat = surest('superheat');
  const differential = owned.find((column) => column.role === 'differential')?.facts.median;
  const defrost = surest('defrost');
  return {
    id,
    ...(setPoint === undefined ? {} : { setPoint: { point: setPoint } }),
    ...(differential === undefined || !(differential >= 0) ? {} : { differential }),
    probes: inPlaceOrder(group.air).map((probe) => probe.column.point.name),
    ...list('returnAir', 'return-air'),
    ...list('coilOut', 'coil-out'),
    ...list('product', 'product'),
    ...list('defrostTermination', 'defrost-termination'),
    ...(valve === undefined ? {} : { valve }),
    ...(superheat === undefined ? {} : { superheat }),
    ...(defrost === undefined ? {} : { defrost: { status: defrost } }),
  };
}

/** From the left end to the right one; words of one line stand at one place. */
const placesInOrder = [
  'far left|ll',
  'left|l|lh|lft|lhs|links|gauche|izquierda|izquierdo|izq|izda|izqda|sinistra|sinistro|sx|esquerda|esquerdo',
  'near left|center left|centre left|lc|cl|lm|ml',
  'center|centre|c|ctr|cntr|middle|mid|m|mitte|midden|milieu|centro',
  'near right|center right|centre right|rc|cr|rm|mr',
  'right|r|rh|rgt|rhs|rechts|droite|derecha|derecho|der|dcha|dcho|destra|destro|dx|direita|direito',
  'far right|rr',
];
const rankOfPlace = new Map(
  placesInOrder.flatMap((words, rank) => words.split('|').map((word) => [word, rank] as const)),
);

/** Left to right where words or L, C, R say so, else by number or letter. */
function inPlaceOrder(air: readonly PlacedProbe[]): PlacedProbe[] {
  // A letter is a place only between a left and a right one: A, B, C, L are letters.
  const ends = new Set(air.map(({ position }) => rankOfPlace.get(position)));
  const bothEnds = ends.has(rankOfPlace.get('left')) && ends.has(rankOfPlace.get('right'));
  const rank = (place: string): number => {
    const word = place.replace(/ (?:end|side|hand)$/, '');
    const at = word.length > 1 || bothEnds ? rankOfPlace.get(word) : undefined;
    return at ?? placesInOrder.length;
  };
  return [...air].sort((a, b) => byPlace(a, b, rank));
}

function byPlace(a: PlacedProbe, b: PlacedProbe, rank: (place: string) => number): number {
  return (
    rank(a.position) - rank(b.position) ||
    byNaturalOrder(a.position, b.position) ||
    byNaturalOrder(a.column.point.name, b.column.point.name)
  );
}
