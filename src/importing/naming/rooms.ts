import { type Token, textOf } from './tokens.ts';
import type { Meaning } from './vocabulary.ts';

type Tokens = readonly Token[];

const ofCircuits: ReadonlySet<Meaning | null> = new Set<Meaning | null>(['defrost', 'valve']);

/**
 * `Zone 2 Prep Space Temp` beside `Zone 2 Prep Defrost` and its valve: the room that this circuit cools, not that of
 * the shop. Such a word says air.
 */
export function withRoomsOfCircuits(all: readonly Tokens[]): readonly Tokens[] {
  const cooled = new Map<string, Set<Meaning | null>>();
  for (const tokens of all) {
    const at = tokens.findIndex(({ meaning }) => ofCircuits.has(meaning));
    if (at > 0) {
      const name = textOf(tokens.slice(0, at));
      cooled.set(name, (cooled.get(name) ?? new Set()).add(tokens[at]!.meaning));
    }
  }
  return all.map((tokens) => {
    const at = tokens.findIndex(({ meaning }) => meaning === 'indoor');
    if (at < 1 || cooled.get(textOf(tokens.slice(0, at)))?.size !== ofCircuits.size) return tokens;
    return tokens.with(at, { ...tokens[at]!, meaning: 'air' });
  });
}
