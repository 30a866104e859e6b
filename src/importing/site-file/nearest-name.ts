/** Number of single-character insertions, deletions, replacements and neighbour swaps between two words. */
export function editDistance(a: string, b: string): number {
  let beforePrevious: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const same = a[row - 1] === b[column - 1];
      let best = Math.min(
        previous[column]! + 1,
        current[column - 1]! + 1,
        previous[column - 1]! + (same ? 0 : 1),
      );
      const swapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      if (swapped) best = Math.min(best, beforePrevious[column - 2]! + 1);
      current.push(best);
    }
    beforePrevious = previous;
    previous = current;
  }
  return previous[b.length]!;
}

/** The candidate that differs least from `name`, spaces, case and punctuation aside; null when none is near. */
export function nearestName(name: string, candidates: Iterable<string>): string | null {
  const wanted = plain(name).slice(0, longestCompared);
  let nearest: string | null = null;
  let smallest = Number.POSITIVE_INFINITY;
  const farthest = Math.max(2, wanted.length * 0.4);
  for (const candidate of candidates) {
    if (Math.abs(plain(candidate).length - wanted.length) > farthest) continue;
    const distance = editDistance(wanted, plain(candidate).slice(0, longestCompared));
    if (distance < smallest) {
      smallest = distance;
      nearest = candidate;
    }
  }
  return smallest <= farthest ? nearest : null;
}

const longestCompared = 80;

function plain(name: string): string {
  return name.toLowerCase().replace(/[\s_.\-/:]/g, '');
}
