import { describe, expect, test } from 'vitest';
import { paintFor, terminalReport } from '../../src/reporting/terminal.ts';
import { exampleOf, finding, healthyExample, troubledExample } from './support/example.ts';

const plain = (columns: number | undefined = 80) => paintFor({ color: false, columns });
const list = terminalReport(troubledExample(), plain());

describe('the ranked list for a terminal', () => {
  test('gives the worst first, then what is to be watched, then notes', () => {
    const places = ['1. ▲ ACT  M01', '2. ◆ WATCH  Suction group S1', '○ M02'].map((text) =>
      list.indexOf(text),
    );
    expect(places.every((at, index) => at > (places[index - 1] ?? -1))).toBe(true);
  });

  test('says what, since when, how fast, to which limit, how sure, why, what to check and to bring', () => {
    for (const label of ['since', 'how fast', 'to limit', 'how sure', 'probably', 'check', 'bring']) {
      expect(list).toMatch(new RegExp(`^ {4}${label} +\\S`, 'm'));
    }
    expect(list).toContain('0.41 °F a day (0.32 to 0.49)');
    expect(list).toContain('in about 4 days (3 to 7 days)');
  });

  test('says what cannot be judged and what would allow it', () => {
    const flowing = list.replace(/\s+/g, ' ');
    expect(flowing).toContain('M01: Logged every 5 min: cycles shorter than 10 min cannot be seen.');
    expect(flowing).toContain('What would allow it: Readings every minute.');
  });

  test('accounts for the import, with the choices made and the flag for the other one', () => {
    const flowing = list.replace(/\s+/g, ' ');
    expect(flowing).toContain('store.csv: 34,560 rows, 1,036,800 values, 1 row and 12 values rejected');
    expect(flowing).toContain('dates: month first, because a 13 stands in the second place');
    expect(flowing).toContain('otherwise --day-first');
  });

  test('warns of the work it leads to and says that air is not food', () => {
    expect(list).toContain('Take care');
    expect(list).toMatch(/air temperatures at the probes, not food/);
    expect(list).not.toMatch(/product is safe|food is safe/i);
  });

  test.each([60, 80, 100])('never exceeds %i columns', (columns) => {
    const lines = terminalReport(troubledExample(), plain(columns)).split('\n');
    for (const line of lines) expect([...line].length).toBeLessThanOrEqual(columns);
  });

  test('holds no escape codes without colour, and the same words with it', () => {
    // biome-ignore lint/suspicious/noControlCharactersInRegex: escape codes are what is looked for
    const codes = /\u001b\[\d+m/g;
    const colored = terminalReport(troubledExample(), paintFor({ color: true, columns: 80 }));
    expect(list).not.toMatch(codes);
    expect(colored).toMatch(codes);
    expect(colored.replace(codes, '')).toBe(list);
  });

  test('lets no control character of a name reach the terminal', () => {
    const hostile = exampleOf((log) => [
      finding(log, { summary: 'Probe \u001b[2J\u0007 \u202eevil is warm.' }),
    ]);
    const text = terminalReport(hostile, plain());
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u202e]/);
  });

  test('says of a healthy site plainly that nothing needs a visit, and on what that rests', () => {
    const healthy = healthyExample();
    const text = terminalReport(healthy, plain()).replace(/\s+/g, ' ');
    const probes = healthy.log.circuits.reduce((sum, circuit) => sum + circuit.probes.length, 0);
    expect(text).toContain('Nothing here needs a visit');
    expect(text).toContain('24 days, a reading every 5 minutes');
    expect(text).toContain(`5 circuits, ${probes} air probes`);
    expect(text).not.toContain('Take care');
  });
});
