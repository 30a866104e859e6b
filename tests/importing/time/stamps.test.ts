import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readTimeText } from '../../../src/importing/layout/cell-types.ts';
import { civilDate, dayNumber } from '../../../src/importing/time/civil.ts';
import { reorderedTime } from '../../../src/importing/time/date-order.ts';
import { TimeReader } from '../../../src/importing/time/time-reader.ts';
import { onlyReport, readContent } from '../support.ts';

const read = (text: string, order: 'mdy' | 'dmy' | 'ymd' | null = null): string => {
  const reader = new TimeReader(order);
  const wall = readTimeText(reader, text);
  if (Number.isNaN(wall)) return 'none';
  if (reader.kind === 'time') return `clock ${wall / 60_000}`;
  const offset = Number.isNaN(reader.offsetMinutes) ? '' : ` ${reader.offsetMinutes}`;
  return `${new Date(wall).toISOString().replace('.000Z', '')}${offset}`;
};

describe('time stamps', () => {
  it.each([
    ['2026-09-01', '2026-09-01T00:00:00'],
    ['2026-09-01 06:00', '2026-09-01T06:00:00'],
    ['2026-09-01T06:00:30Z', '2026-09-01T06:00:30 0'],
    ['2026-09-01T06:00:30.1234567-06:00', '2026-09-01T06:00:30.123Z -360'],
    ['2026-09-01T06:00:30+0530', '2026-09-01T06:00:30 330'],
    ['2026-09-01 06:00:30 +02', '2026-09-01T06:00:30 120'],
    ['2026-09-01 06:00 MDT', '2026-09-01T06:00:00 -360'],
    ['2026-09-01 06:00:00 UTC', '2026-09-01T06:00:00 0'],
    // Project Haystack writes the name of the zone behind the offset (project-haystack.org, Zinc dateTime; from memory).
    ['2026-09-01T06:00:00-06:00 Denver', '2026-09-01T06:00:00 -360'],
    ['2026-09-01T06:00:00-04:00 New_York', '2026-09-01T06:00:00 -240'],
    ['2026-09-01T06:00:00Z London', '2026-09-01T06:00:00 0'],
    ['2026-09-01 06:00 Denver', 'none'],
    ['20260901T060000Z', '2026-09-01T06:00:00 0'],
    ['20260901 0600', '2026-09-01T06:00:00'],
    ['202609010600', '2026-09-01T06:00:00'],
    ['2026/9/1 6:00', '2026-09-01T06:00:00'],
    ['2026.09.01 06:00', '2026-09-01T06:00:00'],
    ['01-Sep-2026 06:00', '2026-09-01T06:00:00'],
    ['1. September 2026 06:00 Uhr', '2026-09-01T06:00:00'],
    ['Sep 1, 2026 6:00:00 PM', '2026-09-01T18:00:00'],
    ['Tue Sep  1 06:00:00 2026', '2026-09-01T06:00:00'],
    ['Tue, 01 Sep 2026 06:00:00 GMT', '2026-09-01T06:00:00 0'],
    ['1 août 2026 06h30', '2026-08-01T06:30:00'],
    ['3 mars 2026 à 12:30', '2026-03-03T12:30:00'],
    ['1-sept-26 06:00', '2026-09-01T06:00:00'],
    ['06:00:00 2026-09-01', '2026-09-01T06:00:00'],
    ['2026-09-01 24:00', '2026-09-02T00:00:00'],
    ['2026-09-01 12:00 AM', '2026-09-01T00:00:00'],
    ['2026-09-01 12:30 PM', '2026-09-01T12:30:00'],
    ['06:30', 'clock 390'],
    ['6:30 p.m.', 'clock 1110'],
  ])('%s', (text, expected) => expect(read(text)).toBe(expected));

  it.each([
    ['13/04/2026 06:00', 'dmy', '2026-04-13T06:00:00'],
    ['04/13/2026 06:00', 'mdy', '2026-04-13T06:00:00'],
    ['3.4.26 06.30', 'dmy', '2026-04-03T06:30:00'],
    ['26/04/03 06:30', 'ymd', '2026-04-03T06:30:00'],
    ['03/04/99', 'mdy', '1999-03-04T00:00:00'],
  ] as const)('%s in order %s', (text, order, expected) => expect(read(text, order)).toBe(expected));

  it.each([
    '',
    'air',
    '36.4',
    '2026-13-01',
    '2026-02-30 06:00',
    '2026-09-01 25:00',
    '2026-09-01 24:01',
    '2026-09-01 06:60',
    '13:00 AM',
    '2026-09-01 06:00 Larkspur',
    '1/2',
    '2026-09',
    '99999999',
    '2026-09-01 06:00:00:00:00',
    '---',
    '1-2-3-4-5-6-7-8-9-10-11-12-13-14',
  ])('“%s” is none', (text) => expect(read(text)).toBe('none'));

  it('are read alike, the second one like the first by what they share', () => {
    const minutes = fc.array(fc.integer({ min: 0, max: 80 * 525_600 }), { minLength: 2, maxLength: 20 });
    fc.assert(
      fc.property(minutes, fc.constantFrom(0, 1, 2), (list, form) => {
        const reader = new TimeReader(null);
        for (const minute of [...list, ...list]) {
          const iso = new Date(minute * 60_000).toISOString();
          const text =
            form === 0
              ? iso.slice(0, 16)
              : form === 1
                ? iso.slice(0, 19).replace('T', ' ')
                : iso.slice(0, 23);
          expect(readTimeText(reader, text)).toBe(minute * 60_000);
        }
      }),
    );
  });
});

describe('the calendar', () => {
  it('agrees with Date over four centuries, both ways', () => {
    for (let day = -80_000; day < 80_000; day += 13) {
      const date = new Date(day * 86_400_000);
      const civil = { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
      expect(civilDate(day)).toEqual(civil);
      expect(dayNumber(civil.year, civil.month, civil.day)).toBe(day);
    }
  });

  it('knows which days there are', () => {
    expect(dayNumber(2028, 2, 29)).not.toBeNaN();
    expect(dayNumber(2026, 2, 29)).toBeNaN();
    expect(dayNumber(2100, 2, 29)).toBeNaN();
    expect(dayNumber(2026, 0, 1)).toBeNaN();
  });

  it('reads a time again in another order as if it had been read so at first', () => {
    const number = fc.integer({ min: 1, max: 31 });
    const order = fc.constantFrom('mdy' as const, 'dmy' as const, 'ymd' as const);
    fc.assert(
      fc.property(number, number, number, order, order, (a, b, c, from, to) => {
        const text = `${a}/${b}/${c} 06:30`;
        const first = readTimeText(new TimeReader(from), text);
        fc.pre(!Number.isNaN(first));
        expect(reorderedTime(first, from, to)).toBe(readTimeText(new TimeReader(to), text));
      }),
      { numRuns: 1000 },
    );
  });
});

describe('a date and a time of day in two columns', () => {
  it.each([
    ['46277', '06:05'],
    ['9/12/2026', '6:05 AM'],
    ['12.09.2026', '06:05:00'],
  ])('%s and %s are one time', async (date, clock) => {
    const later = clock.replace('05', '10');
    const readings = await readContent(
      `Date,Time,Air\n${date},${clock},34.5\n${date},${later},34.6\n${date},${clock.replace('05', '15')},34.7\n`,
      { zone: date.includes('/') ? 'America/Denver' : 'Europe/Berlin' },
    );
    const first = readings.columns[0]!.times;
    expect([...first].map((ms) => ms - first[0]!)).toEqual([0, 300_000, 600_000]);
    expect(new Date(first[0]!).toISOString().slice(0, 10)).toBe('2026-09-12');
    expect(onlyReport(readings).rowsRejected).toBe(0);
  });
});
