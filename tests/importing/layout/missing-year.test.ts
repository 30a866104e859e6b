import { describe, expect, it } from 'vitest';
import { isoTime, type PlainRow, partsOf, plainRows, stepMs, two, written } from '../damaged/plain-log.ts';
import {
  memorySource,
  normalized,
  normalizedContent,
  onlyReport,
  readContent,
  readSources,
} from '../support.ts';

const hour12 = (hour: number): number => (hour % 12 === 0 ? 12 : hour % 12);
const monthDay = (wallMs: number): string => isoTime(wallMs).slice(5);
const american = (wallMs: number): string => {
  const { month, day, hour, minute } = partsOf(wallMs);
  return `${month}/${day} ${hour12(hour)}:${two(minute)} ${hour < 12 ? 'AM' : 'PM'}`;
};
const syslog = (wallMs: number): string =>
  `Sep ${String(partsOf(wallMs).day).padStart(2)} ${isoTime(wallMs).slice(11)}`;

const writings = [
  { name: 'a span above', file: 'export.csv', before: ['Period: 2026-09-03 to 2026-09-05'], time: monthDay },
  { name: 'the name of the file', file: 'store_2026-09.csv', before: [], time: american },
  { name: 'digits in the name of the file', file: 'LOG20260903.TXT', before: [], time: syslog },
  { name: 'a title', file: 'export.csv', before: ['Log of 2026'], time: syslog },
  {
    name: 'a line of its own, under dotted dates',
    file: 'export.csv',
    before: ['Jahr: 2026'],
    time: (wallMs: number) =>
      `${two(partsOf(wallMs).day)}.${two(partsOf(wallMs).month)}. ${isoTime(wallMs).slice(11, 16)}`,
  },
] as const;

describe('stamps without a year', () => {
  it.each(writings)('take it from $name', async ({ file, before, time }) => {
    const readings = await readSources([memorySource(file, written({ before, time }))]);
    expect(normalized(readings) === (await normalizedContent(written()))).toBe(true);
    expect(onlyReport(readings).choices).toContainEqual(
      expect.objectContaining({ chosen: '2026', override: '--year' }),
    );
  });

  it('take it where date and clock stand apart', async () => {
    const time = (wallMs: number): string => monthDay(wallMs).replace('-', '/').replace(' ', ',');
    const text = await normalizedContent(written({ timeHeader: 'Date,Time', before: ['Export 2026'], time }));
    expect(text === (await normalizedContent(written()))).toBe(true);
  });

  it('take it from the option, and name it in a refusal without', async () => {
    const text = await normalizedContent(written({ time: monthDay }), { overrides: { year: 2026 } });
    expect(text === (await normalizedContent(written()))).toBe(true);
    await expect(readContent(written({ time: monthDay }))).rejects.toMatchObject({
      code: 'year-missing',
      message: expect.stringMatching(/^export\.csv line 2: .*“09-03 00:00:00”.* --year 2026/u),
    });
  });

  it.each(['oldest', 'newest'])('pass New Year, %s first', async (first) => {
    const rows = plainRows().map(
      (row, at): PlainRow => ({ ...row, wallMs: Date.UTC(2026, 11, 30) + at * stepMs }),
    );
    const inFile = first === 'oldest' ? rows : rows.toReversed();
    const before = ['From 2026-12-30 to 2027-01-01'];
    const text = await normalizedContent(written({ before, time: monthDay }, inFile));
    expect(text === (await normalizedContent(written({}, rows)))).toBe(true);
  });
});

describe('months in words', () => {
  it('pass New Year in other languages too', async () => {
    const rows = plainRows().map(
      (row, at): PlainRow => ({ ...row, wallMs: Date.UTC(2026, 11, 30) + at * stepMs }),
    );
    const time = (wallMs: number): string => {
      const { day, month } = partsOf(wallMs);
      return `${day}. ${month === 12 ? 'Dez.' : 'Jan.'} ${isoTime(wallMs).slice(11, 16)}`;
    };
    const text = await normalizedContent(written({ before: ['Jahr 2026'], time }, rows));
    expect(text === (await normalizedContent(written({}, rows)))).toBe(true);
  });
});

describe('clocks alone', () => {
  it.each(['2026-09-03.csv', 'LOG20260903.TXT'])('take the date from the name %s', async (file) => {
    const time = (wallMs: number): string => isoTime(wallMs).slice(11);
    const readings = await readSources([memorySource(file, written({ time }))]);
    expect(normalized(readings) === (await normalizedContent(written()))).toBe(true);
    expect(onlyReport(readings).choices[0]!.chosen).toContain('that in the name of the file');
  });
});
