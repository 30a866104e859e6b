import { describe, expect, it } from 'vitest';
import type { Evidence } from '../../src/model/evidence.ts';
import { dayMs, evidence, findings, one, quietSignals, rackHigh, recovery, wholeRise } from './support.ts';

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

describe('the sentence on a creep says when it meets its limit', () => {
  const meets = (ends: { readonly earliest: number; readonly latest: number | null }): string => {
    const { log } = quietSignals;
    const now = log.grid.startMs + log.grid.count * log.grid.stepMs;
    const after = (days: number | null): number | null => (days === null ? null : now + days * dayMs);
    const projection = {
      limit: 5,
      at: now + 6 * dayMs,
      earliest: after(ends.earliest),
      latest: after(ends.latest),
      reason: null,
      levelNow: 3,
    };
    return one(wholeRise({ projection })).summary;
  };

  it('between two ends where most of the way is made', () => {
    expect(meets({ earliest: 2, latest: 14 })).toContain(
      'reaches 41.0 °F in about 6 days (2 to 14) if it goes on',
    );
  });

  it('and at the soonest where it may stop before', () => {
    expect(meets({ earliest: 2, latest: null })).toContain(
      'reaches 41.0 °F in about 6 days if it goes on, 2 days at the soonest, and may never get there',
    );
  });
});

describe('machines that start too often', () => {
  const machine = evidence({
    analysis: 'short-cycling',
    kind: 'short-cycling',
    circuit: null,
    shape: 'compressor',
    points: ['S1 comp 1'],
    measures: measured({ startsPerHour: 13, usualStartsPerHour: 2 }, '{starts}/h'),
  });
  const low = (days: number) =>
    rackHigh({ shape: 'low', onset: machine.onset + days * dayMs, features: { height: -7 } });

  it('since their suction stands far too low are one trouble with it, and it says what to look at', () => {
    const finding = one(machine, low(1));
    expect(finding.causes[0]!.cause).toBe('compressor-control');
    expect(finding.summary).toContain('drawn down to the cut-out');
  });

  it('have a differential that is too tight where it does not, and it is another trouble where it came later', () => {
    expect(one(machine).causes[0]!.cause).toBe('tight-differential');
    expect(findings(machine, low(5))).toHaveLength(2);
  });
});
