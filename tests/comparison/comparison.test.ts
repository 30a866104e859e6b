import { describe, expect, test } from 'vitest';
import { compareHistories } from '../../src/comparison/compare-histories.ts';
import { sisterComparison } from '../../src/comparison/compare-sisters.ts';
import { sistersDocument } from '../../src/reporting/comparison/sisters-document.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { gridOf, groupOf, handMadeLog } from '../support/hand-made-log.ts';
import { dailyDefrosts, type SimpleCase, simpleCase } from '../support/simple-case.ts';

const days = 8;
const stepMinutes = 5;

function history(circuits: readonly SimpleCase[]) {
  const grid = gridOf(days, stepMinutes);
  return computeSignals(
    handMadeLog({
      days,
      stepMinutes,
      suctionGroups: [groupOf()],
      circuits: circuits.map((options, k) =>
        simpleCase(grid, { id: `M0${k + 1}`, suctionGroup: 'S1', seed: k + 1, ...options }),
      ),
    }),
  );
}

describe('two histories of one site', () => {
  const before = history([{}, {}, {}]);

  test('that are alike say that nothing changed', () => {
    const after = history([{ seed: 11 }, { seed: 12 }, { seed: 13 }]);
    const { places } = compareHistories(before, after);
    expect(places.flatMap(({ figures }) => figures.filter(({ changed }) => changed))).toEqual([]);
  });

  test('show which figure of which circuit changed, by how much, the largest first', () => {
    const after = history([{}, { offset: (_, probe) => (probe === 2 ? 2 : 0) }, {}]);
    const [worst, ...others] = compareHistories(before, after).places;
    expect(worst!.id).toBe('M02');
    const offset = worst!.figures.find(({ id, point }) => id === 'offset' && point === 'M02 air C')!;
    expect(offset.changed).toBe(true);
    expect(offset.difference).toBeCloseTo(2, 0);
    expect(offset.low).toBeLessThan(offset.difference);
    expect(others.flatMap(({ figures }) => figures.filter(({ changed }) => changed))).toEqual([]);
  });

  test('that do not hold the same circuits say which are missing', () => {
    const { onlyBefore, onlyAfter } = compareHistories(before, history([{}, {}]));
    expect({ onlyBefore, onlyAfter }).toEqual({ onlyBefore: ['M03'], onlyAfter: [] });
  });
});

describe('a circuit beside its sisters', () => {
  test('stands outside in what sets it apart', () => {
    const signals = history([
      { cooling: () => 0.22, isDefrosting: dailyDefrosts([120, 480, 840, 1200], 45) },
      {},
      {},
    ]);
    const { sisters, figures } = sisterComparison(signals)('M01')!;
    expect(sisters).toEqual(['M02', 'M03']);
    const outside = figures.filter((figure) => figure.outside >= 1).map(({ id }) => id);
    expect(outside).toContain('duty');
    expect(outside).not.toContain('level');
  });

  test('that stood off most of the week is not compared by how it was before', () => {
    const isOff = (minute: number): boolean => minute > 2.4 * 1440;
    const signals = history([{ isOff }, {}, {}, {}]);
    const compared = sisterComparison(signals)('M01')!;
    expect(compared.figures).toEqual([]);
    expect(sistersDocument(compared, signals.log).summary).toMatch(/^M01 cannot be set beside its sisters/);
    const other = sisterComparison(signals)('M02')!.figures;
    expect(other.find(({ id }) => id === 'level')!.sisters.map(({ circuit }) => circuit)).toEqual([
      'M03',
      'M04',
    ]);
  });

  test('is not compared with a single one', () => {
    expect(sisterComparison(history([{}, {}]))('M01')).toBeNull();
  });
});
