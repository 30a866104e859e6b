import { groupedBy } from '../points/grouped-by.ts';
import { wordsIn } from './kind.ts';
import type { Token } from './tokens.ts';
import type { Meaning } from './vocabulary.ts';

type Tokens = readonly Token[];

const longest = 3;
/** What a word with a number says whatever stands behind it. */
const sayTheSame: ReadonlySet<Meaning | null> = new Set<Meaning | null>([
  ...(['compressor', 'circuit', 'case', 'rack', 'group', 'low', 'medium'] as const),
]);

/**
 * `T1 Air` and `T1 Defrost`, `HP1 P-suct` and `HP1 P-disch`: letters and a number in front of columns of several kinds are
 * a name, so that the letters say nothing of what is measured, as they do in `T1` beside `D1` and `V1`.
 */
export function withLettersOfNames(all: readonly Tokens[]): readonly Tokens[] {
  const named = new Set<Tokens>();
  for (const together of groupedBy(all.filter(isLettered), frontOf).values()) {
    const has = together.map((tokens) => wordsIn(tokens.slice(2)));
    const some = (...meanings: readonly Meaning[]): boolean => has.some((one) => one(...meanings));
    const kinds = [
      some('defrost'),
      some('valve', 'feed', 'fan', 'compressor'),
      some('air', 'set', 'return', 'supply', 'temperature', 'probe'),
      some('suction'),
      some('discharge', 'highSide'),
    ];
    if (kinds.filter(Boolean).length > 1) for (const tokens of together) named.add(tokens);
  }
  return all.map((tokens) => {
    const [letters] = tokens;
    if (!named.has(tokens)) return tokens;
    const meaning = sayTheSame.has(letters!.meaning) ? letters!.meaning : null;
    return tokens.with(0, { ...letters!, meaning, ofName: true });
  });
}

function isLettered([letters, number]: Tokens): boolean {
  return (
    letters?.kind === 'word' &&
    letters.text.length <= longest &&
    number?.kind === 'number' &&
    number.from === letters.to
  );
}

function frontOf([letters, number]: Tokens): string {
  return `${letters!.text} ${number!.text}`;
}
