import { describe, expect, test } from 'vitest';
import { guessSite } from '../../../src/importing/naming/guess-site.ts';
import { dialects } from './dialects.ts';
import { engineersNames } from './engineers-names.ts';
import { exported } from './invented-store.ts';
import { tradeWords } from './trade-words.ts';
import { guessedCircuits, inNameOrder, readingsIn, trueCircuits } from './truth.ts';

describe.each(
  [...dialects, ...tradeWords, ...engineersNames].map((dialect) => [dialect.title, dialect] as const),
)('%s', (_, dialect) => {
  const parts = exported(dialect);
  const guess = guessSite(readingsIn(parts));

  test('finds every circuit with its probes in order, set point, defrost, valve, return air and suction group', () => {
    expect(inNameOrder(guessedCircuits(guess))).toEqual(inNameOrder(trueCircuits(dialect)));
  });

  test('tells the temperature unit where the columns do not', () => {
    expect(guess.site.units?.temperature).toBe(dialect.unitsStated ? undefined : dialect.temperature);
  });

  test('gives each suction group its compressors', () => {
    const groups = (guess.site.racks ?? []).flatMap((rack) => rack.suctionGroups ?? []);
    for (const group of groups) {
      const number = parts.find(({ point }) => point === group.pressure)!.part;
      const compressors = parts
        .filter(({ part }) => part.what === 'compressor' && 'group' in number && part.group === number.group)
        .map(({ point }) => point);
      expect(group.compressors ?? []).toEqual(compressors);
      expect(group.class).toBe('group' in number && number.group === 1 ? 'low' : 'medium');
    }
  });

  test('the order of the columns does not matter', () => {
    const shuffled = [...parts].sort(
      (a, b) => a.point.length - b.point.length || (a.point < b.point ? 1 : -1),
    );
    expect(guessSite(readingsIn(shuffled)).site).toEqual(guess.site);
  });

  test('every guess has a reason and a sureness between 0 and 1', () => {
    expect(guess.notes.length).toBeGreaterThan(0);
    for (const note of guess.notes) {
      expect(note.because).not.toBe('');
      expect(note.confidence).toBeGreaterThan(0);
      expect(note.confidence).toBeLessThanOrEqual(1);
    }
  });
});
