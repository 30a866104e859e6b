import { describe, expect, test } from 'vitest';
import { guessSite } from '../../../src/importing/naming/guess-site.ts';
import { circuits, type Dialect, exported, type StorePart } from './invented-store.ts';
import { guessedCircuits, inNameOrder, readingsIn, trueCircuits } from './truth.ts';

/** Names that only count the columns of each sort. */
function counted(title: string, prefix: (part: StorePart) => string | null): Dialect {
  const numbers = new Map<StorePart, string>();
  const last = new Map<string, number>();
  return {
    title,
    temperature: 'degF',
    unitsStated: false,
    name: (part) => {
      const words = prefix(part);
      if (words === null) return null;
      const known = [...numbers].find(([other]) => JSON.stringify(other) === JSON.stringify(part));
      if (known !== undefined) return known[1];
      last.set(words, (last.get(words) ?? 0) + 1);
      numbers.set(part, `${words}${String(last.get(words)).padStart(3, '0')}`);
      return numbers.get(part)!;
    },
  };
}

const plain: ReadonlySet<string> = new Set(['air', 'defrost', 'valve']);
const dialects = [
  counted('inputs and outputs: AI-001, DI-001', ({ what }) =>
    plain.has(what) ? (what === 'air' ? 'AI-' : 'DI-') : null,
  ),
  counted('columns without names: column 1', ({ what }) => (plain.has(what) ? 'column ' : null)),
  counted('words that only count: Temp 1, Defrost 1, Valve 1', ({ what }) =>
    plain.has(what) ? `${{ air: 'Temp', defrost: 'Defrost' }[what as 'air'] ?? 'Valve'} ` : null,
  ),
];

describe.each(dialects.map((dialect) => [dialect.title, dialect] as const))('%s', (_, dialect) => {
  const guess = guessSite(readingsIn(exported(dialect)));

  test('probes that warm and cool together make a circuit, with the states that move their air', () => {
    expect(inNameOrder(guessedCircuits(guess))).toEqual(inNameOrder(trueCircuits(dialect)));
  });

  test('says that it went by behaviour, is less sure, and asks', () => {
    expect(guess.confidence).toBeLessThanOrEqual(0.75);
    expect(guess.questions[0]).toMatch(/names do not say/);
    expect(guess.notes.find((note) => note.path.at(-1) === 'probes')?.because).toMatch(
      /warm and cool together/,
    );
  });
});

test('probes without any neighbour are a circuit each, with little confidence', () => {
  const alone = exported({
    title: 'one probe a circuit',
    temperature: 'degC',
    unitsStated: true,
    name: (part) => (part.what === 'air' && part.probe === 0 ? `X${'KQZPWJ'[part.circuit]}` : null),
  });
  const guess = guessSite(readingsIn(alone));
  expect(guessedCircuits(guess).map(({ probes }) => probes)).toEqual(
    ['XJ', 'XK', 'XP', 'XQ', 'XW', 'XZ'].map((name) => [name]),
  );
  expect(guess.confidence).toBeLessThan(0.5);
});

test('a probe that its name puts among others, but that moves on its own with all of them, is asked about', () => {
  const mixed = exported({
    title: 'names that lie',
    temperature: 'degC',
    unitsStated: true,
    name: (part) =>
      part.what === 'air' && part.probe === 0
        ? `M${Math.floor(part.circuit / 2) + 1} air ${(part.circuit % 2) + 1}`
        : null,
  });
  const guess = guessSite(readingsIn(mixed));
  expect(guess.site.circuits).toHaveLength(circuits.length / 2);
  expect(guess.questions.join(' ')).toMatch(/do not warm and cool together/);
});
