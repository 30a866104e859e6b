import { describe, expect, test } from 'vitest';
import { settings } from '../../src/analyses/rack-pressure/settings.ts';
import { dewTemperature, knownRefrigerants } from '../../src/refrigerants/saturation.ts';
import { measureOf } from '../support/analyse-case.ts';
import { recordOf, valuesOf } from '../support/hand-made-log.ts';
import { day, days, grid, judge, pressureOf } from './support/rack-case.ts';

/** R-448A by the tables here: condensing 8 K above an outdoor temperature of this daily mean, °C, and never under 25 °C. */
function condenser(mean: number) {
  const outdoor = recordOf(
    'Outdoor air',
    'temperature',
    valuesOf(grid, (minute) => mean + 7 * Math.sin((2 * Math.PI * minute) / 1440)),
  );
  const kilopascal = (celsius: number) => 1083 * Math.exp(0.0262 * (celsius - 25));
  const discharge = (extra: (minute: number) => number) =>
    recordOf(
      'Discharge',
      'pressure',
      valuesOf(grid, (minute) => kilopascal(Math.max(25, outdoor.values[minute / 5]! + 8 + extra(minute)))),
    );
  return { outdoor, kilopascal, discharge };
}

describe('condensing', () => {
  const { outdoor, discharge, kilopascal } = condenser(18);

  test('that follows the weather is silent, also through a hot spell', () => {
    expect(
      judge({ pressure: pressureOf(() => 45), discharge: discharge(() => 0) }, [], [outdoor]).evidence,
    ).toEqual([]);
    const hot = { ...outdoor, values: outdoor.values.map((value, i) => value + (i > 9 * 288 ? 9 : 0)) };
    const values = hot.values.map((value) => kilopascal(Math.max(25, value + 8)));
    const through = recordOf('Discharge', 'pressure', values);
    expect(judge({ pressure: pressureOf(() => 45), discharge: through }, [], [hot]).evidence).toEqual([]);
  });

  test('that stands well above the weather is told', () => {
    const { evidence } = judge(
      { pressure: pressureOf(() => 45), discharge: discharge((minute) => (day(minute) < 9 ? 0 : 9)) },
      [],
      [outdoor],
    );
    expect(evidence.map((one) => one.shape)).toEqual(['condensing-high']);
    expect(measureOf(evidence[0]!, 'condensingRise')).toBeGreaterThan(4);
  });

  // It cannot show while the condenser stands on its floor: that the weather has turned cool is no cure.
  test('is not said to be over because the days turned cool, and is once warm ones showed nothing', () => {
    const told = (cool: number, until: number) => {
      const weather = {
        ...outdoor,
        values: outdoor.values.map((value, i) => value - (i > 12 * 288 ? cool : 0)),
      };
      const dirt = (i: number) => (i > 8 * 288 && i < until * 288 ? 7 : 0);
      const values = weather.values.map((value, i) => kilopascal(Math.max(25, value + 8 + dirt(i))));
      const [high] = judge(
        { pressure: pressureOf(() => 45), discharge: recordOf('Discharge', 'pressure', values) },
        [],
        [weather],
      ).evidence;
      return high!;
    };
    expect(told(16, days).end).toBeNull();
    expect(told(0, 12).end).not.toBeNull();
  });

  test('is judged by a first third all of whose hours were on the floor', () => {
    const spring = recordOf(
      'Outdoor air',
      'temperature',
      valuesOf(grid, (minute) => 11 + 5 * Math.sin((2 * Math.PI * minute) / 1440)),
    );
    const pressures = (dirt: number) =>
      recordOf(
        'Discharge',
        'pressure',
        valuesOf(grid, (minute) =>
          kilopascal(Math.max(25, spring.values[minute / 5]! + 8 + (day(minute) < 9 ? 0 : dirt))),
        ),
      );
    const shapes = (dirt: number, refrigerant: string | null) =>
      judge(
        { pressure: pressureOf(() => 45), discharge: pressures(dirt), refrigerant },
        [],
        [spring],
      ).evidence.map(({ shape }) => shape);
    expect(shapes(9, 'R-448A')).toEqual(['condensing-high']);
    expect(shapes(9, null)).toEqual(['condensing-high']);
    expect(shapes(0, 'R-448A')).toEqual([]);
    expect(shapes(0, null)).toEqual([]);
  });

  describe('of a refrigerant that nobody named', () => {
    const judgeUnnamed = (extra: (minute: number) => number, loose: Parameters<typeof judge>[2]) =>
      judge({ pressure: pressureOf(() => 45), discharge: discharge(extra), refrigerant: null }, [], loose)
        .evidence;
    const risen = (minute: number) => (day(minute) < 9 ? 0 : 9);

    test('is told by its pressure against the weather, not overstated', () => {
      const [told, ...more] = judgeUnnamed(risen, [outdoor]);
      expect(more).toEqual([]);
      expect(told?.shape).toBe('condensing-high');
      expect(measureOf(told!, 'condensingRise')).toBeGreaterThan(4.4);
      expect(measureOf(told!, 'condensingRise')).toBeLessThan(9);
    });

    test('is silent while it follows the weather, and where no weather is logged', () => {
      expect(judgeUnnamed(() => 0, [outdoor])).toEqual([]);
      expect(judgeUnnamed(risen, [])).toEqual([]);
    });

    test('rises by at most the slope taken for it', () => {
      for (const name of knownRefrigerants) {
        const pressures = Array.from({ length: 400 }, (_, i) => 300 * 1.01 ** i);
        for (const pressure of pressures) {
          const [cold, warm] = [dewTemperature(name, pressure), dewTemperature(name, 1.01 * pressure)];
          if (!(cold >= 20 && warm <= 45)) continue;
          expect((100 * Math.log(1.01)) / (warm - cold)).toBeLessThan(settings.condensingSlope.value + 0.05);
        }
      }
    });
  });
});

describe('condensing that creeps', () => {
  const { outdoor, discharge } = condenser(22);

  test('little by little over a week, as behind a condenser that gets dirty, is told before hours stand out', () => {
    const dirt = (minute: number): number => Math.max(0, Math.min(3.8, 0.6 * (day(minute) - 6)));
    const { evidence } = judge({ pressure: pressureOf(() => 45), discharge: discharge(dirt) }, [], [outdoor]);
    expect(evidence.map(({ shape, features }) => [shape, features.creeping])).toEqual([
      ['condensing-high', 1],
    ]);
    const little = (minute: number): number => dirt(minute) / 3;
    const quiet = judge({ pressure: pressureOf(() => 45), discharge: discharge(little) }, [], [outdoor]);
    expect(quiet.evidence).toEqual([]);
  });
});

describe('the receiver', () => {
  const level = (percent: (minute: number) => number) =>
    recordOf(
      'Liquid level',
      'fraction',
      valuesOf(grid, (minute) => percent(minute) / 100),
    );
  // A level anywhere between 0 and 14 %, usually 6 to 8, can be normal for one rack; a channel that reads 0.93 for ever
  // is not connected: common practice, no source.
  test.each([
    ['runs between 0 and 14 per cent', (minute: number) => 7 + 7 * Math.sin(minute / 700)],
    [
      'stands at 6 to 8 and is empty for an hour now and then',
      (minute: number) => (minute % 2880 < 60 ? 0 : 7 + Math.sin(minute / 300)),
    ],
  ])('that %s is normal for this rack', (_, percent) => {
    expect(judge({ pressure: pressureOf(() => 45), liquidLevel: level(percent) }).evidence).toEqual([]);
  });
  test('that reads 0.93 for ever says nothing', () => {
    expect(judge({ pressure: pressureOf(() => 45), liquidLevel: level(() => 0.93) }).evidence).toEqual([]);
  });
  test('that falls to a quarter of its usual level is low for this rack', () => {
    const { evidence } = judge({
      pressure: pressureOf(() => 45),
      liquidLevel: level((minute) => (day(minute) < 11 ? 32 : 7) + 3 * Math.sin(minute / 300)),
    });
    expect(evidence.map((one) => one.shape)).toEqual(['level-low']);
  });
  test('that drains for days is dated to when it left its own range', () => {
    const { evidence } = judge({
      pressure: pressureOf(() => 45),
      liquidLevel: level(
        (minute) => 32 - 5 * Math.min(5, Math.max(0, day(minute) - 7)) + 2 * Math.sin(minute / 300),
      ),
    });
    expect(day((evidence[0]!.onset - grid.startMs) / 60_000)).toBeCloseTo(7.9, 0);
  });
});
