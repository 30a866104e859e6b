import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analyses/superheat/index.ts';
import type { Circuit } from '../../src/model/log.ts';
import { dayOfOnset, measureOf, shapesOf, verdictOf } from '../support/analyse-case.ts';
import { gridOf, groupOf, recordOf, valuesOf } from '../support/hand-made-log.ts';
import { simpleCase } from '../support/simple-case.ts';

const days = 12;
const grid = gridOf(days);
const day = (minute: number) => minute / 1440;
/** Slow enough cycles that the valve feeds for more than five minutes. */
const slow = { differential: 2.2, cooling: () => 0.3 };

/** Superheat that reads 12 K while shut and falls to `settled` within minutes of feeding. */
function withSuperheat(settled: (minute: number) => number, differenceOf = 12): Circuit {
  const circuit = simpleCase(grid, slow);
  let value = differenceOf;
  const values = circuit.valve!.values.map((open, minute) => {
    value += ((open > 0 ? settled(minute) : differenceOf) - value) / 1.5;
    return value;
  });
  return { ...circuit, superheat: recordOf('M01 superheat', 'temperature-difference', values) };
}
const judge = (circuit: Circuit) => verdictOf(analyse, [circuit], days);

describe('superheat', () => {
  // Near 22 °F while not calling or just after opening it means nothing; settled at 6 to 8 °F it is good: common
  // practice, no source.
  test('of 22 °F while shut and 7 °F settled is silent', () => {
    expect(judge(withSuperheat(() => 3.9)).evidence).toEqual([]);
  });

  test('that has risen and stays high is starving, from its day on', () => {
    const { evidence } = judge(withSuperheat((minute) => (day(minute) < 6 ? 3.9 : 11)));
    expect(evidence.map((one) => one.shape)).toEqual(['starving']);
    expect(Math.abs(dayOfOnset(evidence[0]!) - 6)).toBeLessThan(1.1);
    expect(measureOf(evidence[0]!, 'superheat')).toBeCloseTo(11, 0);
    expect(measureOf(evidence[0]!, 'usualSuperheat')).toBeCloseTo(3.9, 0);
  });

  test('that always stood about its limit and then rises is dated by the rise', () => {
    // A day over the limit by chance, then half as much again above it for good.
    const risen = (minute: number) =>
      day(minute) < 7 ? 12.05 + (Math.floor(day(minute)) % 2 ? 0.4 : 0) : 15;
    const starving = judge(withSuperheat(risen)).evidence.find((one) => one.shape === 'starving')!;
    expect(Math.abs(dayOfOnset(starving) - 7)).toBeLessThan(1.1);
  });

  // A valve that throttles lets its coil run partly dry: that is how it cools less. Common practice, no source.
  test('of a valve that regulates says that its coil starves only while it stands wide open', () => {
    const regulated = (wideShare: (minute: number) => number, whileWide: (minute: number) => number) => {
      const circuit = simpleCase(grid, slow);
      const openings = valuesOf(grid, (minute) => (minute % 60 < 60 * wideShare(minute) ? 0.9 : 0.3));
      const values = openings.map((opening, minute) => (opening > 0.5 ? whileWide(minute) : 11));
      return shapesOf(
        judge({
          ...circuit,
          valve: recordOf('M01 valve', 'fraction', openings),
          superheat: recordOf('M01 superheat', 'temperature-difference', values),
        }),
      );
    };
    const lessLoad = (minute: number) => (day(minute) < 6 ? 0.8 : 0.3);
    expect(regulated(lessLoad, () => 4)).toEqual([]);
    expect(regulated(lessLoad, (minute) => (day(minute) < 6 ? 4 : 11))).toEqual(['starving']);
  });

  test('under 3 °F is flooding', () => {
    expect(shapesOf(judge(withSuperheat(() => 0.8)))).toEqual(['flooding']);
  });

  test('that swings within minutes hunts, one that is steady does not', () => {
    const hunting = judge(withSuperheat((minute) => 5 + 8 * Math.sin((2 * Math.PI * minute) / 4)));
    expect(shapesOf(hunting)).toContain('hunting');
    const { features } = hunting.evidence.find(({ shape }) => shape === 'hunting')!;
    expect(features.huntingOverLimit).toBeGreaterThan(1);
    const later = judge(
      withSuperheat((minute) => 5 + (day(minute) < 6 ? 2 : 8) * Math.sin((2 * Math.PI * minute) / 4)),
    );
    const began = later.evidence.find(({ shape }) => shape === 'hunting')!;
    expect(began.features.huntingOverUsual).toBeGreaterThan(2);
  });

  test('read every 5 minutes of a valve that mostly opens for one reading is not judged, and says what would allow it', () => {
    const coarse = gridOf(days, 5);
    const openings = (readings: (opening: number) => number) => {
      const circuit = simpleCase(coarse, slow);
      const length = (i: number) => readings(Math.floor(i / 5));
      const valve = {
        ...circuit.valve!,
        values: circuit.valve!.values.map((_, i) => (i % 5 < length(i) ? 1 : 0)),
      };
      const superheat = circuit.valve!.values.map((_, i) => (i % 5 === 0 ? 1 : 5));
      return verdictOf(
        analyse,
        [{ ...circuit, valve, superheat: recordOf('M01 superheat', 'temperature-difference', superheat) }],
        days,
        5,
      );
    };
    const mostlyOne = openings((opening) => (opening % 3 === 0 ? 3 : 1));
    expect(mostlyOne.evidence).toEqual([]);
    expect(mostlyOne.abstentions[0]!.reason).toMatch(/^6[67] % of the openings .* one reading of 5 min/);
    expect(mostlyOne.abstentions[0]!.needs).toContain('every minute');
    expect(openings((opening) => (opening % 3 === 0 ? 1 : 3)).abstentions).toEqual([]);
  });

  test('is not judged while the air is far from its set point', () => {
    const circuit = withSuperheat(() => 3.9);
    const { evidence, abstentions } = judge({ ...circuit, setPoint: -10 });
    expect(evidence).toEqual([]);
    expect(abstentions[0]!.reason).toContain(
      'never feeds for more than 5 minutes with the air near its set point',
    );
  });
});

describe('superheat from the coil outlet', () => {
  // R-448A: dew pressure 429.1 kPa at −5 °C (CoolProp 8.0.1).
  const pressure = recordOf(
    'S1 suction',
    'pressure',
    valuesOf(grid, () => 429.1),
  );
  const coil = recordOf(
    'M01 coil out',
    'temperature',
    valuesOf(grid, () => 5),
  );
  const circuit = { ...simpleCase(grid, { ...slow, suctionGroup: 'S1' }), coilOut: [coil] };

  test('is its distance from the dew point at the suction pressure', () => {
    const { evidence } = verdictOf(analyse, [circuit], days, 1, [groupOf({ pressure })]);
    expect(evidence).toEqual([]);
    const warmer = {
      ...circuit,
      coilOut: [
        recordOf(
          'M01 coil out',
          'temperature',
          valuesOf(grid, () => 8),
        ),
      ],
    };
    const starved = verdictOf(analyse, [warmer], days, 1, [groupOf({ pressure })]).evidence;
    expect(measureOf(starved[0]!, 'superheat')).toBeCloseTo(13, 0);
  });

  test.each([
    [
      'an unknown refrigerant',
      groupOf({ pressure, refrigerant: 'R-999Z' }),
      'the refrigerant in the site file',
    ],
    // A pack built for R-502 may hold R-507A (common practice, no source): nobody's guess is taken.
    [
      'R-502, of which no table is relied on',
      groupOf({ pressure, refrigerant: 'R-502' }),
      'the refrigerant in the site file',
    ],
    ['no pressure', groupOf(), 'suction pressure'],
  ])('is not guessed with %s', (_, group, needs) => {
    const { evidence, abstentions } = verdictOf(analyse, [circuit], days, 1, [group]);
    expect(evidence).toEqual([]);
    expect(abstentions[0]!.needs).toBe(needs);
  });

  test('is not judged without the valve', () => {
    const { abstentions } = verdictOf(analyse, [{ ...circuit, valve: null }], days, 1, [
      groupOf({ pressure }),
    ]);
    expect(abstentions[0]!.needs).toBe('the valve');
  });
});
