import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analyses/rack-pressure/index.ts';
import { settings } from '../../src/analyses/rack-pressure/settings.ts';
import type { Circuit, SuctionGroup } from '../../src/model/log.ts';
import type { Record } from '../../src/model/record.ts';
import { dewTemperature, knownRefrigerants } from '../../src/refrigerants/saturation.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { dayOfOnset, measureOf, shapesOf } from '../support/analyse-case.ts';
import { gridOf, groupOf, handMadeLog, recordOf, valuesOf } from '../support/hand-made-log.ts';
import { noise, simpleCase } from '../support/simple-case.ts';

const days = 16;
const grid = gridOf(days, 5);
const day = (minute: number) => minute / 1440;
const psig = (gauge: number) => gauge * 6.894757 + 101.325;

function pressureOf(gauge: (minute: number) => number): Record {
  const random = noise(7);
  const values = valuesOf(grid, (minute) => psig(gauge(minute) + random() + 1.5 * Math.sin(minute / 200)));
  return recordOf('S1 suction', 'pressure', values, { exportUnit: '[psi]', resolution: 0.69 });
}

function judge(
  group: Partial<SuctionGroup>,
  circuits: readonly Circuit[] = [],
  unassigned: readonly Record[] = [],
) {
  const parts = { days, stepMinutes: 5, circuits, suctionGroups: [groupOf(group)], unassigned };
  const site = computeSignals(handMadeLog(parts));
  return analyse(site.groups[0]!, site);
}

const fiveCircuits = (
  cooling: (minute: number) => number,
  isOff: (minute: number) => boolean = () => false,
) =>
  ['M01', 'M02', 'M03', 'M04', 'M05'].map((id, i) =>
    simpleCase(grid, { id, seed: i + 1, probes: 2, suctionGroup: 'S1', cooling, isOff }),
  );

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

describe('a suction target with no visit near', () => {
  const stepped = (to: number) => (minute: number) => (day(minute) < 9.4 ? 45 : to);
  const targetOf = (gauge: (minute: number) => number) =>
    recordOf(
      'S1 target',
      'pressure',
      valuesOf(grid, (minute) => psig(gauge(minute))),
    );
  // A colder coil takes more out of the air while it feeds, so its valve feeds less.
  const colder = fiveCircuits((minute) => (day(minute) < 9.4 ? 0.3 : 0.45));
  const usual = fiveCircuits(() => 0.35);
  const machines = (before: number, since: number) =>
    [0, 1, 2].map((k) =>
      recordOf(
        `comp ${k}`,
        'status',
        valuesOf(grid, (minute) => ((minute / 5 + k) % 10 < (day(minute) < 9.4 ? before : since) ? 1 : 0)),
      ),
    );

  test('that was lowered is told with both values and what the valves do since', () => {
    const { evidence } = judge(
      { pressure: pressureOf(stepped(38)), pressureSetPoint: targetOf(stepped(38)) },
      colder,
    );
    expect(evidence.map((one) => one.shape)).toEqual(['target-lowered']);
    expect(measureOf(evidence[0]!, 'targetBefore')).toBeCloseTo(psig(45), 0);
    expect(measureOf(evidence[0]!, 'targetNow')).toBeCloseTo(psig(38), 0);
    expect(measureOf(evidence[0]!, 'feedingChange')).toBeLessThan(-5);
    expect(Math.abs(dayOfOnset(evidence[0]!) - 9.4)).toBeLessThan(0.06);
  });

  test('is read from the pressure where none is logged and the circuits answer', () => {
    const { evidence } = judge({ pressure: pressureOf(stepped(36)) }, colder);
    expect(evidence.map((one) => one.shape)).toEqual(['target-lowered']);
    expect(evidence[0]!.features.fromColumn).toBe(0);
    expect(measureOf(evidence[0]!, 'suctionNow')).toBeCloseTo(psig(36), -1);
    expect(Math.abs(dayOfOnset(evidence[0]!) - 9.4)).toBeLessThan(0.15);
  });

  test('that the machines do not reach is told so, and is no lack of capacity', () => {
    const { evidence } = judge({
      pressure: pressureOf(() => 45),
      pressureSetPoint: targetOf(stepped(36)),
      compressors: machines(5, 10),
    });
    expect(evidence.map((one) => one.shape)).toEqual(['target-lowered']);
    expect(evidence[0]!.features.reached).toBe(0);
  });

  test('that was raised by a little is told, too', () => {
    const { evidence } = judge({
      pressure: pressureOf(stepped(48)),
      pressureSetPoint: targetOf(stepped(48)),
    });
    expect(evidence.map((one) => one.shape)).toEqual(['target-raised']);
    expect(measureOf(evidence[0]!, 'targetNow')).toBeCloseTo(psig(48), 0);
  });

  test('is not read from a pressure that rises, unless its machines are seen to rest', () => {
    const shapes = (compressors: Record[]) =>
      shapesOf(judge({ pressure: pressureOf(stepped(52)), compressors }, usual));
    expect(shapes(machines(6, 4))).toEqual(['target-raised']);
    expect(shapes(machines(6, 8))).toEqual(['high']);
    expect(shapes(machines(6, 10))).toEqual(['capacity-shortfall']);
    expect(shapes([])).toEqual(['high']);
  });

  test.each<[string, Partial<SuctionGroup>, readonly Circuit[]]>([
    [
      'that floats',
      {
        pressure: pressureOf((minute) => 42 + 4 * Math.sin(minute / 900)),
        pressureSetPoint: targetOf((minute) => 42 + 4 * Math.sin(minute / 900)),
      },
      usual,
    ],
    [
      'that was put back',
      {
        pressure: pressureOf((minute) => (day(minute) > 5 && day(minute) < 8 ? 40 : 45)),
        pressureSetPoint: targetOf((minute) => (day(minute) > 5 && day(minute) < 8 ? 40 : 45)),
      },
      usual,
    ],
    ['whose circuits do not answer', { pressure: pressureOf(stepped(41)) }, usual],
    [
      'that seems to sink little by little',
      { pressure: pressureOf((minute) => 45 - Math.max(0, day(minute) - 5)) },
      colder,
    ],
    [
      'that moved by less than a psi',
      { pressure: pressureOf(stepped(44)), pressureSetPoint: targetOf(stepped(44)) },
      colder,
    ],
  ])('is not one %s', (_, group, circuits) => {
    expect(shapesOf(judge(group, circuits)).filter((shape) => shape.startsWith('target'))).toEqual([]);
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

  test('is not a compressor that trips on low pressure again and again', () => {
    const gauge = (minute: number) => (day(minute) > 9 && minute % 180 < 10 ? 10 : 45);
    const { evidence } = judge({ pressure: pressureOf(gauge), pressureSetPoint: psig(45) });
    expect(evidence.map((one) => one.shape)).toEqual(['low-pressure-trips']);
    expect(measureOf(evidence[0]!, 'tripsADay')).toBe(8);
  });

  test('is not what dips the export begins with: those are the habit of the rack', () => {
    const gauge = (minute: number) => (day(minute) > 1 && minute % 180 < 10 ? 10 : 45);
    const { evidence } = judge({ pressure: pressureOf(gauge), pressureSetPoint: psig(45) });
    expect(evidence.every((one) => one.features.note === 1)).toBe(true);
  });
});

describe('condensing', () => {
  const outdoor = recordOf(
    'Outdoor air',
    'temperature',
    valuesOf(grid, (minute) => 18 + 7 * Math.sin((2 * Math.PI * minute) / 1440)),
  );
  // R-448A dew pressure by the tables here: condensing 8 K above outdoor and never under 25 °C.
  const kilopascal = (celsius: number) => 1083 * Math.exp(0.0262 * (celsius - 25));
  const discharge = (extra: (minute: number) => number) =>
    recordOf(
      'Discharge',
      'pressure',
      valuesOf(grid, (minute) => kilopascal(Math.max(25, outdoor.values[minute / 5]! + 8 + extra(minute)))),
    );

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
  const outdoor = recordOf(
    'Outdoor air',
    'temperature',
    valuesOf(grid, (minute) => 22 + 7 * Math.sin((2 * Math.PI * minute) / 1440)),
  );
  const kilopascal = (celsius: number) => 1083 * Math.exp(0.0262 * (celsius - 25));
  const discharge = (extra: (minute: number) => number) =>
    recordOf(
      'Discharge',
      'pressure',
      valuesOf(grid, (minute) => kilopascal(Math.max(25, outdoor.values[minute / 5]! + 8 + extra(minute)))),
    );

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
});

describe('a target that floats', () => {
  const floating = (still: (minute: number) => number | null) => {
    const gauge = (minute: number) => still(minute) ?? 45 + 3 * Math.sin(minute / 500);
    const values = valuesOf(grid, (minute) => psig(gauge(minute)));
    const pressureSetPoint = recordOf('S1 target', 'pressure', values);
    return judge({ pressure: pressureOf(gauge), pressureSetPoint }).evidence;
  };

  test('and goes on floating is silent', () => {
    expect(floating(() => null)).toEqual([]);
  });

  test('and has stood still for days in the midst of its range has lost its float, since that hour', () => {
    const [stopped, ...others] = floating((minute) => (day(minute) < 8.3 ? null : 45));
    expect(others).toEqual([]);
    expect(stopped).toMatchObject({ shape: 'float-stopped', features: { note: 0 } });
    expect(Math.abs(dayOfOnset(stopped!) - 8.3)).toBeLessThan(0.1);
  });

  test('is seen to float and to stop where it is logged so coarsely that it moves by two steps a day', () => {
    const coarse = 6.894757;
    const atStep = (value: number) => Math.round(value / coarse) * coarse;
    const swinging = (minute: number) => 45 + 1.2 * Math.sin(minute / 220);
    const coarselyLogged = (still: (minute: number) => number | null) => {
      const values = valuesOf(grid, (minute) => atStep(psig(still(minute) ?? swinging(minute))));
      const pressureSetPoint = recordOf('S1 target', 'pressure', values, { resolution: coarse });
      return judge({ pressure: pressureOf(swinging), pressureSetPoint }).evidence;
    };
    const stopped = coarselyLogged((minute) => (day(minute) < 8.3 ? null : 45));
    expect(stopped.map(({ shape, features }) => [shape, features.note])).toEqual([['float-stopped', 0]]);
    expect(coarselyLogged(() => null)).toEqual([]);
    const quieter = (minute: number) => (day(minute) < 9 ? null : 45 + 0.6 * Math.sin(minute / 220));
    expect(coarselyLogged(quieter)).toEqual([]);
  });

  // A load without reserve holds the float at its lowest, one that needs nothing at its highest: common practice, no
  // source.
  test.each([42, 48])('and stands at %d psig, an end of its range, may be held there: a remark', (end) => {
    const [stopped] = floating((minute) => (day(minute) < 8 ? null : end));
    expect(stopped!.features.note).toBe(1);
  });
});

describe('a target after a visit', () => {
  const inVisit = (minute: number) => day(minute) > 8.4 && day(minute) < 8.5;
  const visited = (after: number) => {
    const target = (minute: number) => (inVisit(minute) ? 10 : day(minute) < 8.4 ? 50 : after);
    return judge(
      {
        pressure: pressureOf(target),
        pressureSetPoint: recordOf(
          'S1 target',
          'pressure',
          valuesOf(grid, (minute) => psig(target(minute))),
        ),
      },
      fiveCircuits(() => 0.35, inVisit),
    ).evidence;
  };

  test('that is back at its old value is right', () => {
    expect(visited(50).map((one) => one.shape)).toEqual(['service-visit']);
  });

  // R-448A at 50 psig, tables here: 4 psi are some 1.9 K.
  test.each([46, 54])('that stands at %d psig where it was 50 was left there', (after) => {
    const left = visited(after).find((one) => one.shape === 'target-left')!;
    expect(Math.abs(measureOf(left, 'targetMoved'))).toBeGreaterThan(1.2);
    expect(measureOf(left, 'targetMoved') > 0).toBe(after > 50);
    expect(Math.abs(dayOfOnset(left) - 8.4)).toBeLessThan(0.02);
  });
});

test('without a pressure column a group that is warm together is told, and what would tell more', () => {
  const circuits = fiveCircuits((minute) => (day(minute) < 9 ? 0.35 : 0.135));
  const { evidence, abstentions } = judge({}, circuits);
  expect(evidence.map((one) => one.shape)).toEqual(['group-warm']);
  expect(evidence[0]!.certainty).toBeLessThan(0.7);
  expect(abstentions[0]!.needs).toBe('suction pressure of the group');
});
