import { describe, expect, test } from 'vitest';
import type { Finding, Projection } from '../../src/model/finding.ts';
import { confidenceText, findingFacts } from '../../src/reporting/finding-facts.ts';
import { endOf } from '../../src/reporting/local-time.ts';
import { evidence } from '../diagnosis/support.ts';
import { finding, troubledExample } from './support/example.ts';

const { log } = troubledExample();
const day = 86_400_000;
const textOf = (label: string, changes: Partial<Finding>): string | undefined =>
  findingFacts(finding(log, changes), log).find((fact) => fact.label === label)?.text;
const projected = (changes: Partial<Projection>): string | undefined =>
  textOf('to limit', {
    projection: { limit: 5, at: null, earliest: null, latest: null, reason: null, ...changes },
  });

describe('the facts of a finding', () => {
  test('say since when, on the clock of the site, and whether it is still so', () => {
    expect(textOf('since', {})).toBe('Thu 10 Sep, 00:00 (15 days, still so at the end of the export)');
    const end = log.grid.startMs + 9 * day + 3 * 3_600_000;
    expect(textOf('since', { end })).toBe('Thu 10 Sep, 00:00 until Thu 10 Sep, 03:00 (3 h)');
  });

  test('count the days to the limit from the end of the export, with the interval', () => {
    const end = endOf(log);
    expect(projected({ at: end + 4 * day, earliest: end + 3 * day, latest: end + 7 * day })).toBe(
      '41.0 °F in about 4 days (3 to 7 days), counted from the end of the export',
    );
    expect(projected({ at: end + 4 * day, earliest: end + 1.8 * day })).toBe(
      '41.0 °F in about 4 days (2 days at the soonest, and it may never get there), counted from the end of the export',
    );
    expect(projected({ at: end + 2 * day, earliest: end - day })).toContain(
      'in about 2 days (1 day at the soonest, and it may never get there)',
    );
    expect(projected({ at: end + 0.4 * day })).toBe(
      '41.0 °F within a day, counted from the end of the export',
    );
  });

  test('say when the limit was reached, and why there is no date', () => {
    expect(projected({ at: endOf(log) - 2 * day })).toBe('41.0 °F, reached by Tue 22 Sep');
    expect(projected({ reason: 'it no longer rises' })).toBe('41.0 °F: it no longer rises');
  });

  test('say how long a rise took that is over, and nothing of the kind of a step', () => {
    const exactly = { low: null, high: null, unit: 'd' };
    const measures = [
      { name: 'daysOfRise', value: 8, ...exactly },
      { name: 'daysSinceRise', value: 6, ...exactly },
    ];
    const shaped = (shape: string) => textOf('how fast', { measures, evidence: [evidence({ shape })] });
    expect(shaped('creep')).toBe('it rose over 8 days and has stood there for the last 6 days');
    expect(shaped('step')).toBeUndefined();
    expect(shaped('swapped')).toBeUndefined();
  });

  test('say how fast a recovery grows, and no pace of what is counted by the day', () => {
    const measured = (name: string, unit: string) => [{ name, value: 3.49, low: 3.01, high: 3.95, unit }];
    expect(textOf('how fast', { measures: measured('lengthening', '%/d') })).toBe(
      'its recovery grows by 3.5 % a day (3.0 to 4.0)',
    );
    const slope = measured('slope', 'K/d');
    expect(textOf('how fast', { kind: 'upward-drift', measures: slope })).toMatch(/^6\.28 °F a day/);
    expect(textOf('how fast', { kind: 'defrost-recovery', measures: slope })).toMatch(
      /^its air warms by 6\.28 °F a day/,
    );
    const trips = { measures: measured('tripsADay', '/d'), evidence: [evidence({ shape: 'step' })] };
    expect(textOf('how fast', trips)).toBeUndefined();
  });

  test('leave out what is not known', () => {
    const labels = findingFacts(finding(log, { measures: [], projection: null }), log).map(
      ({ label }) => label,
    );
    expect(labels).toEqual(['since', 'how sure']);
  });

  test('say how sure in a word and a number', () => {
    expect([0.95, 0.75, 0.4].map(confidenceText)).toEqual(['high, 95 %', 'medium, 75 %', 'low, 40 %']);
  });
});
