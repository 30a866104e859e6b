import { describe, expect, test } from 'vitest';
import { energyRanges } from '../../src/audit/energy.ts';
import { monthOf } from '../../src/audit/month.ts';
import { bubblePressure } from '../../src/refrigerants/saturation.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import type { Celsius } from '../../src/units/quantities.ts';
import { gridOf, groupOf, handMadeLog, recordOf, valuesOf } from '../support/hand-made-log.ts';

const days = 28;
const grid = gridOf(days, 15);
const refrigerant = 'R-448A';
/** A warmer and a cooler day by turns, from 10 to 22 °C. */
const outdoorOn = (day: number): Celsius => 16 + 6 * Math.sin((2 * Math.PI * day) / 9);

function rangesOf(condensingOn: (day: number) => Celsius, { outdoor = true } = {}) {
  const daily = (of: (day: number) => number) => valuesOf(grid, (minute) => of(Math.floor(minute / 1440)));
  const discharge = recordOf(
    'S1 discharge',
    'pressure',
    daily((day) => bubblePressure(refrigerant, condensingOn(day))),
  );
  const log = handMadeLog({
    days,
    stepMinutes: 15,
    suctionGroups: [groupOf({ refrigerant, discharge })],
    unassigned: outdoor ? [recordOf('Outdoor', 'temperature', daily(outdoorOn))] : [],
  });
  const diagnosis = { findings: [], circuits: [], abstentions: [] };
  return energyRanges({ log, signals: computeSignals(log), diagnosis, month: monthOf(log, null)! }).filter(
    ({ kind }) => kind === 'condensing-high',
  );
}

describe('condensing in the energy lines', () => {
  test('that follows the weather alone costs nothing that anybody could save', () => {
    expect(rangesOf((day) => outdoorOn(day) + 12)).toEqual([]);
  });

  test('5 K above the same weather in the last week: 9 °F at 0.8 to 2 % are 7 to 18 %', () => {
    const [range] = rangesOf((day) => outdoorOn(day) + 12 + (day >= 21 ? 5 : 0));
    expect(range).toMatchObject({ place: 'S1', isAtSameOutdoor: true, unit: '%' });
    expect(range!.departure).toBeCloseTo(5, 1);
    expect(range!.low).toBeCloseTo(7.2, 1);
    expect(range!.high).toBeCloseTo(18, 0);
    expect(range!.source).toContain('common practice, no source');
  });

  test('without an outdoor temperature only a large step is told, and not as the fault of the condenser', () => {
    const steady = (step: number) =>
      rangesOf((day) => 30 + (day >= 21 ? step : 0), { outdoor: false }).map(
        (range) => range.isAtSameOutdoor,
      );
    expect(steady(3)).toEqual([]);
    expect(steady(5)).toEqual([false]);
  });
});
