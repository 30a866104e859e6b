import { describe, expect, test } from 'vitest';
import type { ExportEntry } from '../../web/json.ts';
import { inOrder } from '../../web/parts/export-order.ts';

type Stop = NonNullable<NonNullable<ExportEntry['summary']>['firstStop']>;

function entry(id: string, site: string, end: string, stop: Partial<Stop> | null | undefined): ExportEntry {
  const firstStop =
    stop === null || stop === undefined
      ? stop
      : { place: 'C1', summary: 'warm', severity: 'watch' as const, weight: 1, ...stop };
  return {
    id,
    received: `2026-11-01T00:00:0${id}Z`,
    state: 'ready',
    files: [],
    siteFile: null,
    progress: null,
    problem: null,
    summary: {
      site,
      timeZone: 'UTC',
      start: '2026-09-01T00:00:00Z',
      end,
      circuits: 3,
      findings: { act: 0, watch: 0, note: 0 },
      guessedSite: false,
      ...(firstStop === undefined ? {} : { firstStop }),
    },
    self: '',
    events: '',
    findings: '',
    report: '',
    page: '',
  } as ExportEntry;
}

const september = '2026-09-30T23:00:00Z';
const october = '2026-10-31T23:00:00Z';

describe('the list of exports, worst first', () => {
  const waiting = { ...entry('7', '', '', null), state: 'waiting', summary: null } as ExportEntry;
  const entries = [
    waiting,
    entry('1', 'Quiet', october, null),
    entry('2', 'Light watch', october, { weight: 0.1 }),
    entry('3', 'Act', october, { severity: 'act', weight: 0.1 }),
    entry('4', 'Heavy watch', october, { weight: 500 }),
    entry('5', 'Quiet', september, { severity: 'act', weight: 90 }),
    entry('6', 'Of an earlier rimelog', october, undefined),
  ];
  const ids = (order: 'worst' | 'newest') => inOrder(entries, order).map(({ id }) => id);

  test('is what must not wait, then the heavier stop; news that a later export has replaced comes last', () => {
    expect(ids('worst')).toEqual(['3', '4', '2', '1', '6', '7', '5']);
  });

  test('leaves the order of the server as it is otherwise', () => {
    expect(ids('newest')).toEqual(entries.map(({ id }) => id));
  });
});
