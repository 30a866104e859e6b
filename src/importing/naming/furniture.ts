import { isPlaceLetter } from './place-letter.ts';
import type { Token } from './tokens.ts';

type Tokens = readonly Token[];

/**
 * `Regal 1` and `Truhe 1`: where kinds of furniture are each counted from one, the word is part of the name. `Unit 3 Case 1`
 * counts cases within units, and there it is not.
 */
export function withFurniture(all: readonly Tokens[]): readonly Tokens[] {
  const countedBy = new Map<string, Set<string>>();
  const together = new Set<string>();
  for (const tokens of all) {
    const counters = tokens.filter((_, at) => isCounter(tokens, at));
    for (const [index, { text }] of counters.entries()) {
      const id = tokens[tokens.indexOf(counters[index]!) + 1]!.text.replace(/^0+(?=\d)/, '');
      countedBy.set(id, (countedBy.get(id) ?? new Set()).add(text));
      if (counters.length > 1) together.add(text);
    }
  }
  const shared = [...countedBy.values()].filter((words) => words.size > 1);
  const names = new Set(shared.flatMap((words) => [...words]).filter((word) => !together.has(word)));
  if (names.size < 2) return all;
  return all.map((tokens) =>
    tokens.map((token, at) =>
      isCounter(tokens, at) && names.has(token.text) ? { ...token, meaning: null } : token,
    ),
  );
}

function isCounter(tokens: Tokens, at: number): boolean {
  const next = tokens[at + 1];
  return (
    tokens[at]!.meaning === 'case' &&
    next !== undefined &&
    (next.kind === 'number' || isPlaceLetter(next.text))
  );
}
