import type { Movements } from './movements.ts';
import type { NamedColumn } from './role.ts';

/** Mean correlation above which two sets of probes defrost and cycle together. Measured on the tests' stores. */
export const movesTogether = 0.5;
const mostClustered = 250;
/** Probes of one line-up never stand so far apart, in °F or °C: chilled and frozen air do. Common practice, no source. */
const furthestApart = 18;

/** Sets of columns that move together, by average linkage; in the order of their first members. */
export function clustersOf(columns: readonly NamedColumn[], movements: Movements): NamedColumn[][] {
  if (columns.length > mostClustered) return columns.map((column) => [column]);
  const clusters = columns.map((column) => [column]);
  const likeness = columns.map((a) =>
    Float64Array.from(columns, (b) =>
      Math.abs(a.facts.median - b.facts.median) > furthestApart ? -1 : movements.together(a.point, b.point),
    ),
  );
  for (;;) {
    let best = movesTogether;
    let pair: readonly [number, number] | null = null;
    for (let a = 0; a < clusters.length; a++) {
      for (let b = a + 1; b < clusters.length; b++) {
        if (likeness[a]![b]! > best) {
          best = likeness[a]![b]!;
          pair = [a, b];
        }
      }
    }
    if (pair === null) return clusters;
    merge(clusters, likeness, pair);
  }
}

function merge(clusters: NamedColumn[][], likeness: Float64Array[], [a, b]: readonly [number, number]): void {
  const sizeA = clusters[a]!.length;
  const sizeB = clusters[b]!.length;
  for (let other = 0; other < clusters.length; other++) {
    const mean = (sizeA * likeness[a]![other]! + sizeB * likeness[b]![other]!) / (sizeA + sizeB);
    likeness[a]![other] = mean;
    likeness[other]![a] = mean;
  }
  clusters[a] = [...clusters[a]!, ...clusters[b]!];
  clusters.splice(b, 1);
  likeness.splice(b, 1);
  for (let row = 0; row < likeness.length; row++) {
    likeness[row] = likeness[row]!.filter((_, column) => column !== b);
  }
}

/** Mean correlation between the members of one set; 1 for a single column. */
export function coherence(columns: readonly NamedColumn[], movements: Movements): number {
  let sum = 0;
  let pairs = 0;
  for (const [index, a] of columns.entries()) {
    for (const b of columns.slice(index + 1)) {
      sum += movements.together(a.point, b.point);
      pairs++;
    }
  }
  return pairs === 0 ? 1 : sum / pairs;
}
