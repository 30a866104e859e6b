import fc from 'fast-check';
import { expect, test } from 'vitest';
import { draftSite } from '../../../src/importing/naming/draft-site.ts';
import { guessSite } from '../../../src/importing/naming/guess-site.ts';
import { parseSiteFile } from '../../../src/importing/site-file/site-file.ts';
import { dialects } from './dialects.ts';
import { exported } from './invented-store.ts';
import { readingsIn } from './truth.ts';

test.each(dialects.map((dialect) => [dialect.title, dialect] as const))(
  'reads back to the same site file: %s',
  (_, dialect) => {
    const guess = guessSite(readingsIn(exported(dialect)));
    expect(parseSiteFile(draftSite(guess), 'draft')).toEqual(guess.site);
  },
);

test('explains each guess beside it and asks what is unsure at the top', () => {
  const guess = guessSite(readingsIn(exported(dialects[0]!)));
  const draft = draftSite(guess);
  expect(draft).toMatch(/temperature: degC # the medians of 17 columns .* \(0\.99\)/);
  expect(draft).toMatch(/# their names share what comes before the probe \(0\.\d\d\)\n\s+probes: \[/);
  for (const question of guess.questions) expect(draft).toContain(`# - ${question}`);
});

test('a bracket in the name of a circuit is closed', () => {
  const dialect = dialects.find(({ title }) => title.includes('brackets'))!;
  const { circuits = [] } = guessSite(readingsIn(exported(dialect))).site;
  expect(circuits.map(({ id }) => id)).toContain('Viandes (meuble 1)');
});

test('readers of YAML 1.1 read names of YAML 1.1 as names: ON, a question mark', () => {
  const named = exported(dialects[0]!).map((part) => ({
    ...part,
    point: `${part.point.replace(/^C01/, 'ON')}${part.part.what === 'compressor' ? ' on?' : ''}`,
  }));
  const draft = draftSite(guessSite(readingsIn(named)));
  expect(draft).toContain('id: "ON"');
  expect(draft).toContain('[ "R1 comp 1 on?", "R1 comp 2 on?" ]');
});

test('hostile column names neither break the draft nor leave their line', () => {
  const hostile = fc
    .string({ unit: 'binary', minLength: 1, maxLength: 30 })
    .map((name) => name.trim())
    .filter((name) => name !== '');
  fc.assert(
    fc.property(fc.uniqueArray(hostile, { minLength: 2, maxLength: 6 }), (names) => {
      const parts = exported(dialects[0]!)
        .filter(({ part }) => part.what === 'air' || part.what === 'defrost')
        .slice(0, names.length)
        .map((part, index) => ({ ...part, point: names[index]! }));
      const guess = guessSite(readingsIn(parts));
      expect(parseSiteFile(draftSite(guess), 'draft')).toEqual(guess.site);
    }),
    { numRuns: 60 },
  );
});
