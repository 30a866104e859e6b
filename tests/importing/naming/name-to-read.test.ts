import { describe, expect, test } from 'vitest';
import { guessSite } from '../../../src/importing/naming/guess-site.ts';
import { dialects } from './dialects.ts';
import { exported } from './invented-store.ts';
import { readingsIn } from './truth.ts';

const parts = exported(dialects[0]!);

/** One file a point, each under the same header. */
function filePerPoint(header: string) {
  return guessSite(readingsIn(parts.map((part) => ({ ...part, fileStem: part.point, point: header }))));
}

const named = (point: unknown): unknown =>
  typeof point === 'string' ? point.replace(/:[^:]*$/, '') : Array.isArray(point) ? point.map(named) : point;

describe.each(['Value', 'Wert', 'Reading'])('one file a point, each with a column %s', (header) => {
  test('gives the circuits that one file with these names gives', () => {
    const together = guessSite(readingsIn(parts)).site.circuits ?? [];
    const apart = filePerPoint(header).site.circuits ?? [];
    expect(
      apart.map(({ id, probes, valve }) => ({ id, probes: named(probes), valve: named(valve) })),
    ).toEqual(together.map(({ id, probes, valve }) => ({ id, probes, valve })));
  });
});

test('a header that says the place is read alone', () => {
  const guess = guessSite(
    readingsIn(
      parts
        .filter(({ part }) => part.what === 'air')
        .map((part, index) => ({ ...part, fileStem: `download ${index}` })),
    ),
  );
  expect((guess.site.circuits ?? []).map(({ id }) => id)).toEqual(
    (guessSite(readingsIn(parts.filter(({ part }) => part.what === 'air'))).site.circuits ?? []).map(
      ({ id }) => id,
    ),
  );
});
