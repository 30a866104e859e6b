import { describe, expect, test } from 'vitest';
import { assembleLog } from '../../../src/importing/assemble.ts';
import { withUnderstoodUnits } from '../../../src/importing/assembling/understood-units.ts';
import { readContent } from '../support.ts';

/** A day of a circuit and a rack, five minutes apart; `headers` name the five columns. */
function dayOf(headers: readonly string[], levels: readonly number[]): string {
  const rows = Array.from({ length: 288 }, (_, index) => {
    const minute = String((index * 5) % 60).padStart(2, '0');
    const hour = String(Math.floor(index / 12)).padStart(2, '0');
    const values = levels.map((level) => (level + Math.sin(index / 9)).toFixed(1));
    return `2026-09-12 ${hour}:${minute},${values.join(',')}`;
  });
  return `Time,${headers.join(',')}\n${rows.join('\n')}\n`;
}

const names = ['M01 air A', 'M01 air B', 'M02 air A', 'S1 suction'];

async function understood(headers: readonly string[], levels: readonly number[], site = null) {
  const readings = await readContent(dayOf(headers, levels));
  const { columns, report } = withUnderstoodUnits(readings, site);
  const { report: checked } = assembleLog(readings, site);
  const unitIssues = (issues: typeof report.issues) =>
    issues.filter(({ code }) => code.startsWith('unit-')).map(({ message }) => message);
  return {
    units: columns.map(({ unit }) => unit),
    codes: report.issues.map(({ code }) => code),
    messages: unitIssues(report.issues),
    checked: unitIssues(checked.issues),
  };
}

describe('columns without a unit, as normalize writes them', () => {
  test('take a sure guess, said with its reason and what overrides it, in the words of check', async () => {
    const { units, messages, checked } = await understood(names, [36, 37, 38, 45]);
    expect(units).toEqual(['degF', 'degF', 'degF', 'psig']);
    expect(messages).toEqual([
      expect.stringMatching(/read as °F, because the medians .*--temperature-unit degF/),
      expect.stringMatching(/read as psig, because .*--pressure-unit psig/),
    ]);
    expect(messages).toEqual(checked);
  });

  test('stand in °F beside columns in °C where only that fits', async () => {
    const beside = ['M01 air A', 'M01 air B', 'M02 air A (°C)', 'S1 suction (barg)'];
    const { units, messages, checked } = await understood(beside, [36, 37, 2, 3]);
    expect(units).toEqual(['degF', 'degF', 'degC', 'barg']);
    expect(messages).toEqual([expect.stringContaining('although other columns say °C')]);
    expect(messages).toEqual(checked);
  });

  test('stay without one where the guess is not sure, and the report asks', async () => {
    const { units, codes, messages } = await understood(
      ['M01 air A (°C)', 'M01 air B (°C)', 'M02 air A (°C)', 'S1 suction'],
      [2, 3, 4, 3],
    );
    expect(units.at(-1)).toBeNull();
    expect(codes).toEqual(['unit-open']);
    expect(messages[0]).toMatch(/^In which unit is S1 suction, perhaps barg, because .*\? .*--pressure-unit/);
  });

  test('stay without one where no name says that they are temperatures', async () => {
    const { units, codes } = await understood(['x1', 'x2', 'x3', 'M01 air A'], [36, 37, 38, 36]);
    expect(units).toEqual([null, null, null, 'degF']);
    expect(codes).toEqual(['unit-guessed', 'unit-open']);
  });

  test('are left as they are, and nothing said, where every column says its unit', async () => {
    const labelled = ['M01 air A (°F)', 'M01 air B (°F)', 'M02 air A (°F)', 'S1 suction (psig)'];
    expect((await understood(labelled, [36, 37, 38, 45])).codes).toEqual([]);
  });
});
