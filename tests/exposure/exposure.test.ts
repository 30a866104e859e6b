import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { circuitExposure, worstProbe } from '../../src/exposure/circuit-exposure.ts';
import { exposureAbove } from '../../src/exposure/exposure.ts';
import { lagViews } from '../../src/exposure/lag-view.ts';
import { coldHoldingLimit } from '../../src/model/air-limit.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { Phase } from '../../src/signals/types.ts';
import { celsiusFrom } from '../../src/units/convert.ts';
import { circuitOf, gridOf, handMadeLog, recordOf, valuesOf } from '../support/hand-made-log.ts';

const fahrenheit = (value: number) => celsiusFrom(value, 'degF');
const grid = gridOf(1);
const cooling = new Uint8Array(grid.count).fill(Phase.cooling);

/** 36 °F all day, 46 °F for 90 minutes from 10:00 and for 30 minutes from 15:00. */
const twoWarmSpells = valuesOf(grid, (minute) =>
  fahrenheit((minute >= 600 && minute < 690) || (minute >= 900 && minute < 930) ? 46 : 36),
);

describe('time above the limit', () => {
  test('is the published cold-holding limit of 41 °F (FDA Food Code 3-501.16(A)(2): 5 °C)', () => {
    expect(coldHoldingLimit).toBeCloseTo(fahrenheit(41), 12);
  });

  test('by hand: 120 minutes 5 °F above 41 °F are 2 h and 2 h · 5 °F = 5.556 K·h', () => {
    const exposure = exposureAbove(twoWarmSpells, cooling, coldHoldingLimit, grid);
    expect(exposure.aboveMinutes).toBe(120);
    expect(exposure.kelvinHours).toBeCloseTo((2 * 5 * 5) / 9, 9);
    expect(exposure.longest).toMatchObject({ from: 600, to: 690, minutes: 90 });
    expect(exposure.longest!.peak).toBeCloseTo(fahrenheit(46), 12);
    expect(exposure.unknownMinutes).toBe(0);
  });

  test('a reading at the limit is not above it', () => {
    const at = new Float64Array(grid.count).fill(coldHoldingLimit);
    expect(exposureAbove(at, cooling, coldHoldingLimit, grid)).toMatchObject({
      aboveMinutes: 0,
      longest: null,
    });
  });

  test('unknown time is kept apart, and ends an episode', () => {
    const holed = Float64Array.from(twoWarmSpells, (value, i) => (i >= 640 && i < 650 ? Number.NaN : value));
    const exposure = exposureAbove(holed, cooling, coldHoldingLimit, grid);
    expect(exposure).toMatchObject({ aboveMinutes: 110, unknownMinutes: 10, knownMinutes: 1430 });
    expect(exposure.longest!.minutes).toBe(40);
  });

  test('tells how much of it was defrost and recovery', () => {
    const phase = Uint8Array.from(cooling);
    phase.fill(Phase.defrost, 600, 630);
    phase.fill(Phase.recovery, 630, 690);
    expect(exposureAbove(twoWarmSpells, phase, coldHoldingLimit, grid)).toMatchObject({
      defrostMinutes: 30,
      recoveryMinutes: 60,
      settledMinutes: 30,
    });
  });

  test('of any history: the parts of a day add up to the day', () => {
    const history = fc.array(
      fc.oneof(fc.double({ min: -20, max: 20, noNaN: true }), fc.constant(Number.NaN)),
      {
        minLength: 4,
        maxLength: 200,
      },
    );
    fc.assert(
      fc.property(history, fc.nat(), (list, cut) => {
        const values = Float64Array.from(list);
        const small = { ...grid, count: values.length };
        const at = cut % values.length;
        const over = (from: number, to: number) => exposureAbove(values, cooling, 0, small, { from, to });
        const whole = over(0, values.length);
        expect(over(0, at).aboveMinutes + over(at, values.length).aboveMinutes).toBe(whole.aboveMinutes);
        expect(over(0, at).kelvinHours + over(at, values.length).kelvinHours).toBeCloseTo(
          whole.kelvinHours,
          9,
        );
        expect(whole.knownMinutes + whole.unknownMinutes).toBe(values.length);
        expect(whole.longest?.minutes ?? 0).toBeLessThanOrEqual(whole.aboveMinutes);
      }),
    );
  });
});

describe('the lag view', () => {
  const long = gridOf(2);
  /** 36 °F, and 49 °F for 40 minutes from 20:00 on the first day. */
  const oneDefrost = valuesOf(long, (minute) => fahrenheit(minute >= 1200 && minute < 1240 ? 49 : 36));

  test.each([20, 60, 120])('after 40 minutes of a 13 °F step shows 36 + 13 (1 − e^(−40/%i)) °F', (tau) => {
    const [view] = lagViews(oneDefrost, coldHoldingLimit, [tau], long);
    expect(view!.peak).toBeCloseTo(fahrenheit(36 + 13 * (1 - Math.exp(-40 / tau))), 9);
  });

  test('leaves out three time constants of the start', () => {
    const [view] = lagViews(oneDefrost, coldHoldingLimit, [120], long);
    expect(view!.countedMinutes).toBe(2 * 1440 - 360);
  });

  test('starts anew after a gap of more than half an hour', () => {
    const holed = Float64Array.from(oneDefrost, (value, i) => (i >= 2000 && i < 2060 ? Number.NaN : value));
    const [view] = lagViews(holed, coldHoldingLimit, [20], long);
    expect(view!.countedMinutes).toBe(2 * 1440 - 60 - 2 * 60);
  });

  test('minutes above, by hand: it crosses 41 °F going up and coming down', () => {
    const [view] = lagViews(oneDefrost, coldHoldingLimit, [20], long);
    const up = 20 * Math.log(13 / 8);
    const peak = 13 * (1 - Math.exp(-2));
    const down = 20 * Math.log(peak / 5);
    expect(Math.abs(view!.aboveMinutes - (40 - up + down))).toBeLessThanOrEqual(2);
  });
});

test('each probe stands for itself: an average at 34 °F hides an end at 41 (the worked example of the trade)', () => {
  const warm = gridOf(2);
  const readings = [42, 30, 30].map((level, i) =>
    recordOf(
      `M01 air ${'ABC'[i]}`,
      'temperature',
      valuesOf(warm, (minute) => fahrenheit(level + 0.1 * (minute % 2))),
    ),
  );
  const circuit = circuitOf({ probes: readings, setPoint: fahrenheit(34) });
  const [signals] = computeSignals(handMadeLog({ days: 2, circuits: [circuit] })).circuits;
  const exposure = circuitExposure(signals!)!;
  expect(exposure.limit.source).toBe('food');
  expect(exposure.probes.map((probe) => probe.exposure.aboveMinutes)).toEqual([2880, 0, 0]);
  expect(worstProbe(exposure)!.point).toBe('M01 air A');
  expect(exposure.probes.map((probe) => probe.coldHolding)).toEqual(
    exposure.probes.map((probe) => probe.exposure),
  );
});

describe('the published cold-holding limit', () => {
  const warm = gridOf(2);
  const exposureOf = (setPoint: number, high: number | null) => {
    const air = recordOf(
      'M01 air A',
      'temperature',
      valuesOf(warm, (minute) => fahrenheit(minute % 10 < 5 ? 43 : 37)),
    );
    const limits = high === null ? null : { high: fahrenheit(high), minutes: 60 };
    const circuit = circuitOf({ probes: [air], setPoint: fahrenheit(setPoint), limits });
    const [signals] = computeSignals(handMadeLog({ days: 2, circuits: [circuit] })).circuits;
    return circuitExposure(signals!)!;
  };

  test('stands beside an alarm limit that is set wider: 43 °F is above the one and under the other half the time', () => {
    const { limit, coldHolding, probes } = exposureOf(36, 45);
    expect([limit.source, coldHolding?.source]).toEqual(['site', 'food']);
    expect(probes[0]!.exposure.aboveMinutes).toBe(0);
    expect(probes[0]!.coldHolding!.aboveMinutes).toBe(1440);
    // 2 °F for 24 hours.
    expect(probes[0]!.coldHolding!.kelvinHours).toBeCloseTo((2 / 1.8) * 24, 6);
  });

  test.each([
    ['frozen cases', -10],
    ['a set point that is not under it', 41],
  ])('does not speak of %s', (_, setPoint) => {
    expect(exposureOf(setPoint, 50).coldHolding).toBeNull();
    expect(exposureOf(setPoint, null).probes[0]!.coldHolding).toBeNull();
  });
});
