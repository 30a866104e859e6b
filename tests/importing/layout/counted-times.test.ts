import { describe, expect, it } from 'vitest';
import { firstWallMs, plainRows, two, written } from '../damaged/plain-log.ts';
import { normalized, normalizedContent, onlyReport, readContent } from '../support.ts';

const seconds = (wallMs: number): number => (wallMs - firstWallMs) / 1000;
const clock = (total: number): string =>
  `${two(Math.floor(total / 3600))}:${two(Math.floor(total / 60) % 60)}:${two(total % 60)}`;

const writings: readonly {
  readonly name: string;
  readonly timeHeader: string;
  readonly before: readonly string[];
  readonly time: (wallMs: number) => string;
}[] = [
  {
    name: 'seconds',
    timeHeader: 'Elapsed (s)',
    before: ['Start:,2026-09-03 00:00:00', ''],
    time: (wallMs) => String(seconds(wallMs)),
  },
  {
    name: 'minutes under a word, from a start with month first',
    timeHeader: 'Minutes',
    before: ['Recording started: 9/3/2026 12:00:00 AM', 'Interval: 5 min'],
    time: (wallMs) => String(seconds(wallMs) / 60),
  },
  {
    name: 'hours with decimals',
    timeHeader: 'Elapsed time (h)',
    before: ['Begin,2026-09-03 00:00'],
    time: (wallMs) => (seconds(wallMs) / 3600).toFixed(6),
  },
  {
    name: 'milliseconds',
    timeHeader: 't (ms)',
    before: ['Trigger time: 2026-09-03 00:00:00.000'],
    time: (wallMs) => String(1000 * seconds(wallMs)),
  },
  {
    name: 'hours, minutes and seconds beyond a day',
    timeHeader: 'Elapsed time',
    before: ['Start time: 2026-09-03 00:00'],
    time: (wallMs) => clock(seconds(wallMs)),
  },
  {
    name: 'days and a clock',
    timeHeader: 'Laufzeit',
    before: ['Beginn: 03.09.2026 00:00'],
    time: (wallMs) => `${Math.floor(seconds(wallMs) / 86_400)}.${clock(seconds(wallMs) % 86_400)}`,
  },
  {
    name: 'a start whose date and clock stand on two lines',
    timeHeader: 'Elapsed (s)',
    before: ['Start Date:,9/3/2026', 'Start Time:,00:00:00'],
    time: (wallMs) => String(seconds(wallMs)),
  },
  {
    name: 'a start with an offset',
    timeHeader: 'Elapsed (s)',
    before: ['Start:,2026-09-03T06:00:00Z', 'Printed:,2026-10-01 08:00'],
    time: (wallMs) => String(seconds(wallMs)),
  },
  {
    name: 'numbered readings at an interval',
    timeHeader: 'Sample',
    before: ['Start,2026-09-03 00:00:00', 'Interval,300 s'],
    time: (wallMs) => String(1 + seconds(wallMs) / 300),
  },
];

describe('times that count from a start', () => {
  it.each(writings)('are read: $name', async ({ timeHeader, before, time }) => {
    const readings = await readContent(written({ timeHeader, before, time }));
    expect(normalized(readings) === (await normalizedContent(written()))).toBe(true);
    expect(onlyReport(readings).choices).toContainEqual(
      expect.objectContaining({
        about: 'time of a row',
        chosen: 'counted from 2026-09-03 00:00:00'.replace(
          '00:00:00',
          before[0]!.includes('Z') ? '06:00:00' : '00:00:00',
        ),
      }),
    );
  });

  it('are no times of day where the start is none of midnight', async () => {
    const time = (wallMs: number): string => clock(seconds(wallMs));
    const rows = plainRows().slice(0, 200);
    const before = ['Start: 2026-09-03 08:30'];
    const counted = await readContent(written({ timeHeader: 'Time', before, time }, rows));
    expect(counted.columns[0]!.times[0]).toBe(Date.UTC(2026, 8, 3, 14, 30));
  });

  it('are times of day where the first is that of the start', async () => {
    const rows = plainRows().slice(102, 200);
    const before = ['Start: 2026-09-03 08:30'];
    const time = (wallMs: number): string => clock(seconds(wallMs));
    const read = await readContent(written({ timeHeader: 'Time', before, time }, rows));
    expect(read.columns[0]!.times[0]).toBe(Date.UTC(2026, 8, 3, 14, 30));
  });

  it.each(['Elapsed (s)', 'Sample', 'Elapsed time'])(
    'refuse a file without a start: %s',
    async (timeHeader) => {
      const time = (wallMs: number): string =>
        timeHeader === 'Sample' ? String(1 + seconds(wallMs) / 300) : String(seconds(wallMs));
      await expect(readContent(written({ timeHeader, time }))).rejects.toMatchObject({
        code: 'no-table',
        message: expect.stringMatching(/“(?:Elapsed|Sample).*write a line such as “Start: /u),
      });
    },
  );
});
