import type { Point } from '../points/point.ts';
import { type Token, tokensOf } from './tokens.ts';
import type { Meaning } from './vocabulary.ts';

/** What a column measures, and nothing of where. */
const quantities: ReadonlySet<Meaning> = new Set<Meaning>(['temperature', 'pressure', 'level', 'humidity']);
const valueWords = new Set(
  'data wert messwert valeur mesure valor medida valore misura waarde meting varde'.split(' '),
);

/**
 * What is read for a point's name: its header; where a file holds one point under a header such as `Value (°C)` or
 * `Temperature`, the name of the file and the quantity.
 */
export function namesToRead(points: readonly Point[]): string[] {
  const pointsIn = new Map<string, number>();
  for (const { fileStems } of points)
    for (const stem of fileStems) pointsIn.set(stem, (pointsIn.get(stem) ?? 0) + 1);
  return points.map(({ header, fileStems }) => {
    const stem = fileStems[0]!;
    if (pointsIn.size < 2 || pointsIn.get(stem) !== 1) return header;
    const words = tokensOf(header);
    if (words.every(saysValue)) return stem;
    return words.every((word) => saysValue(word) || isQuantity(word)) ? `${stem} ${header}` : header;
  });
}

function saysValue({ text, meaning }: Token): boolean {
  return meaning === 'status' || valueWords.has(text);
}

function isQuantity({ meaning }: Token): boolean {
  return meaning !== null && quantities.has(meaning);
}
