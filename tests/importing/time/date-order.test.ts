import { describe, expect, it } from 'vitest';
import { normalized, onlyReport, type ReadingSetup, readContent } from '../support.ts';

const csv = (stamps: readonly string[]): string =>
  `Time,Air\n${stamps.map((stamp, index) => `${stamp},${30 + index}.5`).join('\n')}\n`;
const firstDay = async (stamps: readonly string[], setup: ReadingSetup = { zone: 'UTC' }): Promise<string> =>
  normalized(await readContent(csv(stamps), setup))
    .split('\n')[1]!
    .slice(0, 10);
const choiceOf = async (stamps: readonly string[], setup: ReadingSetup = { zone: 'UTC' }) =>
  onlyReport(await readContent(csv(stamps), setup)).choices.find(
    ({ about }) => about === 'order of day and month',
  );

const eachDay = (write: (day: number) => string, days: number): string[] =>
  Array.from({ length: days }, (_, index) => write(index + 1));

describe('day and month', () => {
  it('are told apart by a day above 12, wherever in the file it stands', async () => {
    expect(await firstDay(eachDay((day) => `${day}/04/2026 06:00`, 13))).toBe('2026-04-01');
    expect(await firstDay(eachDay((day) => `04/${day}/2026 06:00`, 13))).toBe('2026-04-01');
  });

  it('are told apart by the steps between days where both orders exist', async () => {
    expect(await firstDay(eachDay((day) => `${day}/04/2026 06:00`, 12))).toBe('2026-04-01');
    expect(await firstDay(eachDay((day) => `04/${day}/2026 06:00`, 12))).toBe('2026-04-01');
    expect(await choiceOf(eachDay((day) => `${day}/04/2026 06:00`, 12))).toMatchObject({
      chosen: 'day first (day/month/year)',
      override: '--month-first',
    });
  });

  it('of a single ambiguous day follow the habits of the zone, and the report says so', async () => {
    const stamps = ['03/04/2026 06:00', '03/04/2026 06:05', '03/04/2026 06:10'];
    expect(await firstDay(stamps, { zone: 'America/Denver' })).toBe('2026-03-04');
    expect(await firstDay(stamps, { zone: 'Europe/Berlin' })).toBe('2026-04-03');
    expect((await choiceOf(stamps, { zone: 'Europe/Berlin' }))!.because).toContain('both orders');
  });

  it('are taken as the caller says', async () => {
    const stamps = ['03/04/2026 06:00', '03/04/2026 06:05', '03/04/2026 06:10'];
    expect(await firstDay(stamps, { zone: 'UTC', overrides: { dateOrder: 'mdy' } })).toBe('2026-03-04');
    expect(await firstDay(stamps, { zone: 'UTC', overrides: { dateOrder: 'dmy' } })).toBe('2026-04-03');
  });

  it('with two-digit years first are told from day-first ones by the steps between days', async () => {
    expect(await firstDay(eachDay((day) => `21-08-${16 + day}T19:58:30`, 8))).toBe('2021-08-17');
    expect(await firstDay(eachDay((day) => `${16 + day}-08-21 19:58:30`, 8))).toBe('2021-08-17');
  });

  it('that contradict themselves leave out the rows that cannot be', async () => {
    const stamps = [...eachDay((day) => `${day + 12}/04/2026 06:00`, 12), '04/25/2026 06:00'];
    const readings = await readContent(csv(stamps), { zone: 'UTC' });
    expect(onlyReport(readings).issues.map(({ code }) => code)).toContain('time-unreadable');
    expect(onlyReport(readings).rowsRejected).toBe(1);
  });

  it('that contradict themselves leave out the same rows whichever come first', async () => {
    const stamps = ['04/25/2026 06:00', ...eachDay((day) => `${day + 12}/04/2026 06:00`, 12)];
    const readings = await readContent(csv(stamps), { zone: 'UTC' });
    const { rowsRejected, values, valuesRejected, issues } = onlyReport(readings);
    expect(normalized(readings)).toMatch(/^time,.*\n2026-04-13T06:00:00Z/u);
    expect([rowsRejected, values, valuesRejected]).toEqual([1, 13, 1]);
    expect(issues.find(({ code }) => code === 'time-unreadable')).toMatchObject({ line: 2, count: 1 });
  });
});

describe('times read before the order of day and month is known', () => {
  const times = async (stamps: readonly string[]): Promise<string[]> =>
    normalized(await readContent(csv(stamps), { zone: 'UTC' }))
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => line.slice(0, 16));

  it('keep a 24:00 at the end of the day that it was written under', async () => {
    const stamps = ['11.09.2026 24:00', '12.09.2026 12:00', '12.09.2026 24:00', '13.09.2026 12:00'];
    expect(await times(stamps)).toEqual([
      '2026-09-12T00:00',
      '2026-09-12T12:00',
      '2026-09-13T00:00',
      '2026-09-13T12:00',
    ]);
  });

  it('keep the day that stood beside their offset', async () => {
    const stamps = ['11/09/2026 23:00 -06:00', '12/09/2026 23:00 -06:00', '13/09/2026 23:00 -06:00'];
    expect(await times(stamps)).toEqual(['2026-09-12T05:00', '2026-09-13T05:00', '2026-09-14T05:00']);
  });

  it('stay where their writing fixes the date and another stamp is damaged', async () => {
    const stamps = ['2026-09-12 06:00', '2026-09-12 06:05', '26-09-12 06:10', '2026-09-12 06:15'];
    const found = await times(stamps);
    for (const stamp of stamps.filter((each) => each.startsWith('2026'))) {
      expect(found).toContain(stamp.replace(' ', 'T'));
    }
  });
});
