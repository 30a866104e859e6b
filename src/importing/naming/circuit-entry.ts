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

const placeOrder = [
  'far left',
  'left',
  'links',
  'gauche',
  'izquierda',
  'sinistra',
  'center left',
  'centre left',
  'center',
  'centre',
  'middle',
  'mitte',
  'milieu',
  'centro',
  'center right',
  'centre right',
  'right',
  'rechts',
  'droite',
  'derecha',
  'destra',
  'far right',
];

/** Left to right where words or L, C, R say so, else by number or letter. */
function inPlaceOrder(air: readonly PlacedProbe[]): PlacedProbe[] {
  const places = new Set(air.map((probe) => probe.position));
  const order = places.has('l') && places.has('r') ? ['ll', 'l', 'c', 'm', 'r', 'rr'] : placeOrder;
  const rank = (place: string): number => {
    const at = order.indexOf(place);
    return at < 0 ? order.length : at;
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
