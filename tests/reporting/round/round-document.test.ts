import { describe, expect, test } from 'vitest';
import {
  type JudgedStore,
  type RoundStop,
  roundDocument,
} from '../../../src/reporting/round/round-document.ts';
import { roundPage } from '../../../src/reporting/round/round-page.ts';
import { roundReport } from '../../../src/reporting/round/round-terminal.ts';
import { paintFor } from '../../../src/reporting/terminal/paint.ts';

const paint = paintFor({ color: false, columns: 80 });

const stop = (store: string, place: string, severity: 'act' | 'watch', weight: number) => ({
  store,
  source: `stores/${store}`,
  place,
  severity,
  kind: 'upward-drift' as const,
  origin: 'case' as const,
  summary: `${place} is warm`,
  onset: '2026-09-10T12:00:00-06:00',
  since: 'Thu 10 Sep',
  pace: null,
  toLimit: null,
  confidence: 'high, 95 %',
  now: null,
  cause: null,
  bring: [],
  others: 0,
  weight,
});

function store(name: string, stops: readonly (RoundStop & { weight: number })[], circuits = 5): JudgedStore {
  return {
    store: {
      store: name,
      source: `stores/${name}`,
      span: '1 Sep to 30 Sep 2026',
      end: '2026-09-30T23:55:00-06:00',
      circuits,
      stops: stops.length,
      notes: 0,
      open: 0,
      notJudged: circuits === 0 ? 'No circuit was judged.' : null,
    },
    stops,
  };
}

const elm = store('Elm', [stop('Elm', 'C1', 'watch', 9), stop('Elm', 'C2', 'act', 0.2)]);
const ash = store('Ash', [stop('Ash', 'C7', 'act', 3)]);
const oak = store('Oak', []);
const fir = store('Fir', [], 0);

describe('a round over several stores', () => {
  const round = roundDocument(
    [oak, elm, fir, ash],
    [{ source: 'x/photo.csv', message: 'photo.csv: a PNG.' }],
  );

  test('puts what must not wait first, whatever the store, then what weighs more', () => {
    expect(round.stops.map(({ place }) => place)).toEqual(['C7', 'C2', 'C1']);
    expect(round.stores.map((each) => each.store)).toEqual(['Ash', 'Elm', 'Fir', 'Oak']);
  });

  test('is the same for any order of the stores', () => {
    const again = roundDocument([ash, fir, elm, oak], round.unreadable);
    expect(again).toEqual(round);
  });

  test('counts a store that could not be judged or read as not known, never as quiet', () => {
    expect(round.summary).toBe(
      '5 stores: 2 places need work, 1 place is to be watched, in 2 stores; 1 store has nothing above a note; of 2 stores nothing is known, named below.',
    );
    const text = roundReport(round, paint);
    const [, quiet = '', unknown = ''] = /Nothing above a note\n(.*?)\n\n(.*)$/su.exec(text) ?? [];
    expect(quiet).toContain('Oak');
    expect(quiet).not.toContain('Fir');
    expect(unknown).toContain('Fir: 1 Sep to 30 Sep 2026 (stores/Fir). No circuit was judged.');
    expect(unknown).toContain('x/photo.csv: a PNG.');
  });

  test('says of nothing found that nothing was found where it could be judged', () => {
    expect(roundDocument([oak], []).summary).toBe(
      '1 store: no place needs a stop; 1 store has nothing above a note.',
    );
  });

  test('says plainly where nothing is known of any store', () => {
    expect(roundDocument([fir], round.unreadable).summary).toBe(
      '2 stores: nothing is known of any, for the reasons below.',
    );
  });

  test('links each stop to the report of its own store, two of one name too', () => {
    const twin = { ...store('Ash', [{ ...stop('Ash', 'C9', 'watch', 1), source: 'more/Ash' }]) };
    const page = roundPage(
      roundDocument([ash, { ...twin, store: { ...twin.store, source: 'more/Ash' } }], []),
      new Map([
        ['stores/Ash', '01-ash.html'],
        ['more/Ash', '02-ash.html'],
      ]),
    );
    expect(page).toContain('<a href="01-ash.html">Ash: C7</a>');
    expect(page).toContain('<a href="02-ash.html">Ash: C9</a>');
  });
});
