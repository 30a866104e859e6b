import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isStart, spellAt, spellsOf } from '../../src/signals/spells.ts';
import type { Spell } from '../../src/signals/types.ts';

const state = fc.constantFrom(0, 1, Number.NaN);

/** Sample by sample, without any walk from change to change. */
function plainly(values: readonly number[]): Spell[] {
  const spells: { from: number; to: number; on: boolean; whole: boolean }[] = [];
  for (const [i, value] of values.entries()) {
    if (Number.isNaN(value)) continue;
    if (i > 0 && values[i - 1] === value) spells.at(-1)!.to = i + 1;
    else spells.push({ from: i, to: i + 1, on: value === 1, whole: false });
  }
  const isKnown = (i: number): boolean => !Number.isNaN(values[i] ?? Number.NaN);
  return spells.map((spell) => ({ ...spell, whole: isKnown(spell.from - 1) && isKnown(spell.to) }));
}

test('spells are the stretches of one state, whole where both their ends were seen', () => {
  fc.assert(
    fc.property(fc.array(state, { maxLength: 40 }), (values) => {
      const spells = spellsOf(Float64Array.from(values));
      const all = Array.from({ length: spells.count }, (_, k) => spellAt(spells, k));
      expect(all).toEqual(plainly(values));
    }),
  );
});

test('a start is a change from standing to running between two known readings', () => {
  fc.assert(
    fc.property(fc.array(state, { maxLength: 40 }), (values) => {
      const spells = spellsOf(Float64Array.from(values));
      const starts = [...spells.from].filter((_, k) => isStart(spells, k));
      expect(starts).toEqual(values.flatMap((value, i) => (value === 1 && values[i - 1] === 0 ? [i] : [])));
    }),
  );
});
