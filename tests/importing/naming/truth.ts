import type { SiteGuess } from '../../../src/importing/naming/guess-site.ts';
import { minuteMs, readingsOf } from '../assemble/readings-of.ts';
import { circuits, type Dialect, exported, type NamedPart, stepMinutes } from './invented-store.ts';

export interface CircuitParts {
  readonly probes: readonly string[];
  readonly setPoint: string | null;
  readonly defrost: string | null;
  readonly valve: string | null;
  readonly returnAir: readonly string[];
  readonly group: string | null;
}

export function readingsIn(parts: readonly NamedPart[]) {
  return readingsOf(parts, { stepMs: stepMinutes * minuteMs });
}

/** What the dialect's columns truly are, circuit by circuit. */
export function trueCircuits(dialect: Dialect): CircuitParts[] {
  const parts = exported(dialect);
  return circuits.map((facts, circuit) => {
    const named = (what: string): string[] =>
      parts
        .filter(({ part }) => part.what === what && 'circuit' in part && part.circuit === circuit)
        .map(nameIn(parts));
    const group = parts.find(
      ({ part }) => part.what === 'suction' && part.group === (facts.class === 'low' ? 1 : 0),
    );
    return {
      probes: named('air'),
      setPoint: named('set')[0] ?? null,
      defrost: named('defrost')[0] ?? null,
      valve: named('valve')[0] ?? null,
      returnAir: named('return'),
      group: group === undefined ? null : group.point,
    };
  });
}

export function guessedCircuits({ site }: SiteGuess): CircuitParts[] {
  const groups = (site.racks ?? []).flatMap((rack) => rack.suctionGroups ?? []);
  return (site.circuits ?? []).map((circuit) => ({
    probes: circuit.probes,
    setPoint: typeof circuit.setPoint === 'object' ? circuit.setPoint.point : null,
    defrost: circuit.defrost?.status ?? null,
    valve: circuit.valve ?? null,
    returnAir: circuit.returnAir ?? [],
    group: groups.find(({ id }) => id === circuit.suctionGroup)?.pressure ?? null,
  }));
}

/** STEM:HEADER where several files carry the header. */
function nameIn(parts: readonly NamedPart[]): (part: NamedPart) => string {
  return ({ point, fileStem }) => {
    const files = new Set(parts.filter((other) => other.point === point).map((other) => other.fileStem));
    return files.size > 1 ? `${fileStem}:${point}` : point;
  };
}

export function inNameOrder(circuits: readonly CircuitParts[]): CircuitParts[] {
  return [...circuits].sort((a, b) => (a.probes[0]! < b.probes[0]! ? -1 : 1));
}
