import { describe, expect, it } from 'vitest';
import type { Evidence } from '../../src/model/evidence.ts';
import { evidence, one, recovery } from './support.ts';

const measured = (sizes: { readonly [name: string]: number }, unit: string): Evidence['measures'] =>
  Object.entries(sizes).map(([name, value]) => ({ name, value, low: null, high: null, unit }));

describe('the sentence on a circuit says how much', () => {
  it.each<[string, Evidence, string]>([
    [
      'a valve starts, against its usual',
      evidence({
        analysis: 'short-cycling',
        kind: 'short-cycling',
        shape: 'valve',
        points: ['M01 valve'],
        measures: measured({ startsPerHour: 13, usualStartsPerHour: 2.46 }, '{starts}/h'),
      }),
      'M01 valve starts too often (13 an hour against 2.5 an hour) since',
    ],
    [
      'superheat is up',
      evidence({
        analysis: 'superheat',
        kind: 'superheat',
        shape: 'starving',
        measures: measured({ superheat: 12, usualSuperheat: 5 }, 'K'),
      }),
      '(21.6 °F against 9.0 °F)',
    ],
    [
      'a defrost warms the coil',
      recovery({ shape: 'weak-rise', measures: measured({ peakRise: 5, usualPeakRise: 15 }, 'K') }),
      '(9.0 °F against 27.0 °F)',
    ],
    [
      'defrosts were missed',
      recovery({
        kind: 'defrost-missed',
        shape: 'missed',
        measures: measured({ missedDefrosts: 14, missedSince: 62 }, '1'),
      }),
      '(14; 62 % of those due since then)',
    ],
  ])('%s', (_, seen, words) => {
    expect(one(seen).summary).toContain(words);
  });

  it('and nothing where it was not measured', () => {
    expect(one(recovery({ shape: 'weak-rise' })).summary).not.toContain('(');
  });
});
