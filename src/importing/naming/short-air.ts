import type { Token } from './tokens.ts';
import type { Meaning } from './vocabulary.ts';

const shortForms: ReadonlyMap<string, Meaning> = new Map<string, Meaning>([
  ['da', 'discharge'],
  ['sa', 'supply'],
  ['ra', 'return'],
]);
const ofCircuits: ReadonlySet<Meaning | null> = new Set<Meaning | null>(['defrost', 'valve', 'set']);

/**
 * `M01.DA1` and `M01.RA` beside `M01.DFR`: discharge, supply and return air in two letters. They say so only as the
 * last word, behind the name of something that defrosts, feeds or has a set point: in Portuguese `da` is an article.
 */
export function withShortAir(all: readonly (readonly Token[])[]): readonly (readonly Token[])[] {
  const fronts = new Set(
    all.flatMap((tokens) => {
      const at = tokens.findIndex(({ meaning }) => ofCircuits.has(meaning));
      return at > 0 ? [textOf(tokens.slice(0, at))] : [];
    }),
  );
  return all.map((tokens) => {
    const at = tokens.findLastIndex(({ kind }) => kind === 'word');
    const meaning = shortForms.get(tokens[at]?.text ?? '');
    if (meaning === undefined || tokens[at]!.meaning !== null) return tokens;
    if (!fronts.has(textOf(tokens.slice(0, at)))) return tokens;
    return tokens.map((token, index) => (index === at ? { ...token, meaning } : token));
  });
}

function textOf(tokens: readonly Token[]): string {
  return tokens.map(({ text }) => text).join(' ');
}
