import { describe, expect, test } from 'vitest';
import type { Circuit } from '../../src/model/log.ts';
import type { Record } from '../../src/model/record.ts';
import { dayOfOnset, measureOf, shapesOf } from '../support/analyse-case.ts';
import { recordOf, valuesOf } from '../support/hand-made-log.ts';
import { noise } from '../support/simple-case.ts';
import { day, fiveCircuits, grid, judge, pressureOf, psig } from './support/rack-case.ts';

describe('suction pressure', () => {
  test('that holds its target is silent', () => {
    expect(judge({ pressure: pressureOf(() => 45), pressureSetPoint: psig(45) }).evidence).toEqual([]);
  });

  test('that rises and warms its circuits is one finding of the group, with their share', () => {
    const circuits = fiveCircuits((minute) => (day(minute) < 9 ? 0.35 : 0.135));
    const gauge = (minute: number) => (day(minute) < 9 ? 45 : 52);
    const { evidence } = judge({ pressure: pressureOf(gauge), pressureSetPoint: psig(45) }, circuits);
    expect(evidence.map((one) => one.shape)).toEqual(['high']);
    expect(evidence[0]!.features.shareWarm).toBe(1);
    expect(Math.abs(dayOfOnset(evidence[0]!) - 9)).toBeLessThan(0.1);
    // R-448A, 45 to 52 psig: 3.6 K of dew temperature (CoolProp tables here)
    expect(measureOf(evidence[0]!, 'saturatedRise')).toBeGreaterThan(3);
    expect(measureOf(evidence[0]!, 'saturatedRise')).toBeLessThan(4.2);
    expect(Math.abs(measureOf(evidence[0]!, 'suctionLevel') - psig(52))).toBeLessThan(2);
    expect(measureOf(evidence[0]!, 'suctionTarget')).toBeCloseTo(psig(45), 0);
  });

  test('that rises by day alone is told with what a gauge shows then, and showed at those hours before', () => {
    const isByDay = (minute: number) => minute % 1440 >= 600 && minute % 1440 < 1320;
    const gauge = (minute: number) => (isByDay(minute) ? (day(minute) < 9 ? 46 : 55) : 44);
    const { evidence } = judge({ pressure: pressureOf(gauge) });
    expect(evidence.map((one) => one.shape)).toEqual(['high']);
    expect(Math.abs(measureOf(evidence[0]!, 'suctionLevel') - psig(55))).toBeLessThan(2);
    expect(Math.abs(measureOf(evidence[0]!, 'suctionUsual') - psig(46))).toBeLessThan(2);
  });

  test.each([
    ['high', 46, 56],
    ['low', 46, 34],
  ])('that has been %s for most of the log is held against what it was before', (shape, before, since) => {
    const { evidence } = judge({ pressure: pressureOf((minute) => (day(minute) < 6 ? before : since)) });
    expect(evidence.map((one) => one.shape)).toEqual([shape]);
    expect(Math.abs(measureOf(evidence[0]!, 'suctionUsual') - psig(before))).toBeLessThan(2);
    expect(Math.abs(measureOf(evidence[0]!, 'suctionLevel') - psig(since))).toBeLessThan(2);
  });

  test('that creeps up is found before it is high in any one hour', () => {
    const gauge = (minute: number) => 45 + 0.42 * Math.max(0, day(minute) - 6);
    const { evidence } = judge({ pressure: pressureOf(gauge), pressureSetPoint: psig(45) });
    expect(evidence.map((one) => one.shape)).toEqual(['high']);
  });

  test('that follows a raised target is told as that', () => {
    const gauge = (minute: number) => (day(minute) < 9 ? 45 : 52);
    const target = recordOf(
      'S1 target',
      'pressure',
      valuesOf(grid, (minute) => psig(gauge(minute))),
    );
    const { evidence } = judge({ pressure: pressureOf(gauge), pressureSetPoint: target });
    expect(evidence.map((one) => one.shape)).toEqual(['target-raised']);
  });

  test('that is high with every machine running is a lack of capacity', () => {
    const gauge = (minute: number) => (day(minute) < 9 ? 45 : 53);
    const running = (share: number) =>
      recordOf(
        `comp ${share}`,
        'status',
        valuesOf(grid, (minute) => (day(minute) > 9 || (minute / 5) % 4 < share ? 1 : 0)),
      );
    const { evidence } = judge({
      pressure: pressureOf(gauge),
      pressureSetPoint: psig(45),
      compressors: [running(1), running(2)],
    });
    expect(evidence.map((one) => one.shape)).toEqual(['capacity-shortfall']);
    expect(evidence[0]!.features.allRunningShare).toBeGreaterThan(0.95);
  });

  test('of an unknown refrigerant is judged by its own norm, without a temperature', () => {
    const gauge = (minute: number) => (day(minute) < 9 ? 45 : 52);
    const { evidence } = judge({ pressure: pressureOf(gauge), refrigerant: null });
    expect(evidence.map((one) => one.shape)).toEqual(['high']);
    expect(measureOf(evidence[0]!, 'saturatedRise')).toBeNaN();
  });

  test('far under target and norm for days is low', () => {
    const { evidence } = judge({
      pressure: pressureOf((minute) => (day(minute) < 11 ? 45 : 32)),
      pressureSetPoint: psig(45),
    });
    expect(shapesOf({ evidence, abstentions: [] })).toContain('low');
  });
});

describe('a pressure that is high in warm hours', () => {
  const isAfternoon = (minute: number) => minute % 1440 >= 660 && minute % 1440 < 1140;
  const isSpell = (minute: number) => day(minute) >= 11;
  const quiet = (gauge: (minute: number) => number) => {
    const random = noise(5);
    const values = valuesOf(grid, (minute) => psig(gauge(minute) + 0.3 * random()));
    return recordOf('S1 suction', 'pressure', values, { exportUnit: '[psi]', resolution: 0.69 });
  };
  const outdoorOf = (warmest: (minute: number) => number) =>
    recordOf(
      'Outdoor',
      'temperature',
      valuesOf(grid, (minute) => (isAfternoon(minute) ? warmest(minute) : 14)),
    );
  const spell = (minute: number) => 45 + (isSpell(minute) && isAfternoon(minute) ? 5 : 0);
  const featuresOf = (
    gauge: (minute: number) => number,
    circuits: readonly Circuit[] = [],
    outdoor: readonly Record[] = [],
  ) => {
    const { evidence } = judge(
      {
        pressure: quiet(gauge),
        pressureSetPoint: psig(45),
        compressors: [
          recordOf(
            'comp 1',
            'status',
            valuesOf(grid, (minute) => (gauge(minute) > 46 || minute % 20 < 10 ? 1 : 0)),
          ),
        ],
      },
      circuits,
      outdoor,
    );
    expect(evidence).toHaveLength(1);
    return evidence[0]!.features;
  };

  test('and comes back every night is told as that, one that stays is not', () => {
    expect(featuresOf(spell).backEveryNight).toBe(1);
    const lost = (minute: number) => 45 + (isSpell(minute) ? (isAfternoon(minute) ? 6 : 3) : 0);
    expect(featuresOf(lost).backEveryNight).toBe(0);
    const lostNights = (minute: number) => (day(minute) > 13 ? lost(minute) : spell(minute));
    expect(featuresOf(lostNights).backEveryNight).toBe(0);
  });

  test('is explained by days warmer than any before, or by as warm ones that were high as well, and by no others', () => {
    const explains = (warmest: (minute: number) => number, gauge = spell) =>
      featuresOf(gauge, [], [outdoorOf(warmest)]).weatherExplains;
    expect(explains((minute) => (isSpell(minute) ? 33 : 24))).toBe(1);
    expect(explains(() => 24)).toBe(0);
    expect(explains((minute) => (day(minute) > 6 && day(minute) < 9 ? 33 : isSpell(minute) ? 33 : 24))).toBe(
      0,
    );
    const isHot = (minute: number) => isSpell(minute) || (day(minute) > 7 && day(minute) < 8);
    const twice = (minute: number) => 45 + (isHot(minute) && isAfternoon(minute) ? 5 : 0);
    expect(explains((minute) => (isHot(minute) ? 33 : 24), twice)).toBe(1);
    expect(featuresOf(spell).weatherExplains).toBeUndefined();
  });

  test('may have been so before and healed', () => {
    const before = (minute: number) =>
      spell(minute) + (day(minute) > 5 && day(minute) < 8 && isAfternoon(minute) ? 3 : 0);
    expect(featuresOf(before).spellBefore).toBe(1);
    expect(featuresOf(spell).spellBefore).toBe(0);
  });

  test('brings the air of a circuit to its limit, or does not', () => {
    const circuits = (short: number) =>
      fiveCircuits((minute) => (isSpell(minute) && isAfternoon(minute) ? short : 0.35));
    expect(featuresOf(spell, circuits(0.35)).limitReached).toBe(0);
    expect(featuresOf(spell, circuits(0.165)).limitReached).toBe(0);
    expect(featuresOf(spell, circuits(0.1)).limitReached).toBe(1);
  });
});

describe('a low-temperature group of few machines', () => {
  // 13 psig and two machines: hours swing by 2 psi with their differential. R-404A there: 1 psi is 1 K of dew point.
  const swinging = (extra: (minute: number) => number) =>
    pressureOf((minute) => 13 + 2 * Math.sin(minute / 170) + extra(minute));

  test('is silent when a few hours stand higher, within what its machines always do', () => {
    const extra = (minute: number) => (day(minute) > 12 && minute % 1440 < 300 ? 1 : 0);
    expect(judge({ pressure: swinging(extra), refrigerant: 'R-404A' }).evidence).toEqual([]);
  });

  test('is told when it leaves what they do', () => {
    const extra = (minute: number) => (day(minute) > 9 ? 7 : 0);
    expect(shapesOf(judge({ pressure: swinging(extra), refrigerant: 'R-404A' }))).toEqual(['high']);
  });

  test('that is drawn down while its circuits defrost has had no visitor', () => {
    const inDefrost = (minute: number) => minute % 720 >= 300 && minute % 720 < 330;
    const circuits = fiveCircuits(() => 0.35).map((circuit) => ({
      ...circuit,
      defrost: {
        ...circuit.defrost,
        status: recordOf(
          `${circuit.id} defrost`,
          'status',
          valuesOf(grid, (minute) => (inDefrost(minute) ? 1 : 0)),
        ),
      },
    }));
    const gauge = (minute: number) => (inDefrost(minute) ? 1 : 45);
    expect(shapesOf(judge({ pressure: pressureOf(gauge), pressureSetPoint: psig(45) }, circuits))).toEqual(
      [],
    );
  });
});

describe('a service visit', () => {
  // A suction group near 50 psig pulled down to about 10 for a repair, circuits shut, is a visit and no rack fault:
  // common practice, no source.
  test('is recognised, and nothing else is said of the rack', () => {
    const inVisit = (minute: number) => day(minute) > 8.4 && day(minute) < 8.5;
    const gauge = (minute: number) => (inVisit(minute) ? 10 : 50);
    const circuits = fiveCircuits(() => 0.35, inVisit);
    const { evidence } = judge({ pressure: pressureOf(gauge), pressureSetPoint: psig(50) }, circuits);
    expect(evidence.map((one) => one.shape)).toEqual(['service-visit']);
    expect(evidence[0]!.features.circuitsOffShare).toBe(1);
    expect(evidence[0]!.end).not.toBeNull();
  });

  test('is recognised, pulled down to four tenths of its gauge, where it left the group at a lower level', () => {
    const inVisit = (minute: number) => day(minute) > 8.4 && day(minute) < 8.5;
    const gauge = (minute: number) => (inVisit(minute) ? 21 : day(minute) < 8.4 ? 50 : 41);
    const target = recordOf(
      'S1 target',
      'pressure',
      valuesOf(grid, (minute) => psig(inVisit(minute) ? 21 : gauge(minute))),
    );
    const circuits = fiveCircuits(() => 0.35, inVisit);
    const { evidence } = judge({ pressure: pressureOf(gauge), pressureSetPoint: target }, circuits);
    expect(evidence.map((one) => one.shape).sort()).toEqual(['service-visit', 'target-left']);
  });

  test('is recognised where no defrost is logged, although shut circuits climb as in one', () => {
    const inVisit = (minute: number) => day(minute) > 8.4 && day(minute) < 8.5;
    const gauge = (minute: number) => (inVisit(minute) ? 10 : 50);
    const circuits = fiveCircuits(() => 0.35, inVisit).map((circuit) => ({
      ...circuit,
      defrost: { ...circuit.defrost, status: null },
    }));
    const { evidence } = judge({ pressure: pressureOf(gauge), pressureSetPoint: psig(50) }, circuits);
    expect(evidence.map((one) => one.shape)).toEqual(['service-visit']);
  });

  test('with machines forced on, one of them tripping on low pressure and run proofs that fail, is no rack fault', () => {
    const inVisit = (minute: number) => day(minute) > 8.4 && day(minute) < 8.5;
    const circuits = fiveCircuits(() => 0.35, inVisit);
    const running = (name: string, during: (minute: number) => boolean) =>
      recordOf(
        name,
        'status',
        valuesOf(grid, (minute) => ((inVisit(minute) ? during(minute) : minute % 30 < 15) ? 1 : 0)),
      );
    const { evidence } = judge(
      {
        pressure: pressureOf((minute) => (inVisit(minute) ? 10 + 4 * (minute % 10 < 5 ? 1 : -1) : 50)),
        pressureSetPoint: psig(50),
        compressors: [
          running('forced', () => true),
          running('tripping', (minute) => minute % 10 < 5),
          running('proof failed', () => false),
        ],
      },
      circuits,
    );
    expect(evidence.map((one) => one.shape)).toEqual(['service-visit']);
  });

  test('is no group that machines left on draw down to their cut-out for days, between readings above it and far below', () => {
    const isLeftOn = (minute: number) => day(minute) > 10;
    const gauge = (minute: number) => (isLeftOn(minute) ? (minute % 90 < 60 ? 12 : 27) : 50);
    const { evidence } = judge(
      { pressure: pressureOf(gauge), pressureSetPoint: psig(50) },
      fiveCircuits(() => 0.35),
    );
    expect(evidence).toMatchObject([{ shape: 'low', end: null }]);
    expect(day((evidence[0]!.onset - grid.startMs) / 60_000)).toBeCloseTo(10, 0);
  });

  test('is not a compressor that trips on low pressure again and again', () => {
    const gauge = (minute: number) => (day(minute) > 9 && minute % 180 < 10 ? 10 : 45);
    const { evidence } = judge({ pressure: pressureOf(gauge), pressureSetPoint: psig(45) });
    expect(evidence.map((one) => one.shape)).toEqual(['low-pressure-trips']);
    expect(measureOf(evidence[0]!, 'tripsADay')).toBe(8);
  });

  test('is not what a rack does whose swing now and then goes just under the depth of a trip', () => {
    const dipsOn = [1, 2, 0, 1, 3, 1, 2, 1, 4, 0, 2, 5, 1, 2, 3, 0, 4, 1, 2, 5];
    const gauge = (minute: number) =>
      minute % 180 < 10 && (minute % 1440) / 180 < dipsOn[Math.floor(day(minute)) % dipsOn.length]! ? 10 : 45;
    expect(judge({ pressure: pressureOf(gauge), pressureSetPoint: psig(45) }).evidence).toEqual([]);
  });

  test('is not what dips the export begins with: those are the habit of the rack', () => {
    const gauge = (minute: number) => (day(minute) > 1 && minute % 180 < 10 ? 10 : 45);
    const { evidence } = judge({ pressure: pressureOf(gauge), pressureSetPoint: psig(45) });
    expect(evidence.every((one) => one.features.note === 1)).toBe(true);
  });
});

test('without a pressure column a group that is warm together is told, and what would tell more', () => {
  const circuits = fiveCircuits((minute) => (day(minute) < 9 ? 0.35 : 0.135));
  const { evidence, abstentions } = judge({}, circuits);
  expect(evidence.map((one) => one.shape)).toEqual(['group-warm']);
  expect(evidence[0]!.certainty).toBeLessThan(0.7);
  expect(abstentions[0]!.needs).toBe('suction pressure of the group');
});
