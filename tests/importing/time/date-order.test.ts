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
});
