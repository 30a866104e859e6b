import { describe, expect, test } from 'vitest';
import type { Circuit } from '../../src/model/log.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { Phase } from '../../src/signals/types.ts';
import { circuitOf, gridOf, groupOf, handMadeLog, recordOf, valuesOf } from '../support/hand-made-log.ts';
import { simpleCase } from '../support/simple-case.ts';

const days = 14;
const grid = gridOf(days);
const only = (circuit: Circuit) => computeSignals(handMadeLog({ days, circuits: [circuit] })).circuits[0]!;

describe('phases', () => {
  const signals = only(simpleCase(grid));
  test('cooling, defrost and the hour after it follow each other', () => {
    expect(signals.phase[119]).toBe(Phase.cooling);
    expect(signals.phase[120]).toBe(Phase.defrost);
    expect(signals.phase[164]).toBe(Phase.defrost);
    expect(signals.phase[165]).toBe(Phase.recovery);
    expect(signals.phase[224]).toBe(Phase.recovery);
    expect(signals.phase[225]).toBe(Phase.cooling);
  });

  test('nothing is known where no probe is', () => {
    const circuit = simpleCase(grid);
    const probes = circuit.probes.map((probe) => ({
      ...probe,
      record: {
        ...probe.record,
        values: Float64Array.from(probe.record.values).fill(Number.NaN, 3000, 3100),
      },
    }));
    const { phase } = only({ ...circuit, probes });
    expect([...phase.subarray(3000, 3100)].every((code) => code === Phase.unknown)).toBe(true);
  });
});

describe('daily figures', () => {
  const signals = only(simpleCase(grid));
  test('the settled air of each probe is about the set point, whatever the defrosts do', () => {
    for (const probe of signals.probes) {
      for (const level of probe.median) expect(Math.abs(level - 2.8)).toBeLessThan(0.3);
      for (const swing of probe.swing) expect(swing).toBeGreaterThan(0.8);
      expect([...probe.coverage].every((share) => share === 1)).toBe(true);
    }
    for (const level of signals.level) expect(Math.abs(level)).toBeLessThan(0.3);
  });

  test('the duty is the share of warming in what feeding takes away', () => {
    // 0.008/min × (22 − 2.8) K against 0.35 K/min: 0.44
    for (const duty of signals.duty) expect(duty).toBeCloseTo(0.44, 1);
  });

  test('an even shift of all probes moves the level by it and no other figure', () => {
    const circuit = simpleCase(grid);
    const shifted = {
      ...circuit,
      probes: circuit.probes.map((probe) => ({
        ...probe,
        record: { ...probe.record, values: probe.record.values.map((value) => value + 1) },
      })),
    };
    const moved = only(shifted);
    moved.level.forEach((level, day) => {
      expect(level - signals.level[day]!).toBeCloseTo(1, 1);
      expect(moved.probes[0]!.swing[day]!).toBeCloseTo(signals.probes[0]!.swing[day]!, 1);
      expect(moved.probes[0]!.recovery[day]!).toBe(signals.probes[0]!.recovery[day]!);
    });
  });

  test('the order of the probes does not matter', () => {
    const circuit = simpleCase(grid);
    const reversed = only({ ...circuit, probes: [...circuit.probes].reverse() });
    expect(reversed.level).toEqual(signals.level);
    expect(reversed.probes[2]!.median).toEqual(signals.probes[0]!.median);
  });

  test('a day in which the clocks go back is one day of 25 hours', () => {
    const log = handMadeLog({ days, clockBackOnDay: 6, circuits: [simpleCase(grid)] });
    const { probes } = computeSignals(log).circuits[0]!;
    expect(probes[0]!.median).toHaveLength(days);
    expect(probes[0]!.night[6]).toBeGreaterThan(2);
    expect(probes[0]!.night[7]).toBeGreaterThan(2);
  });
});

describe('circuits of any make', () => {
  test.each([1, 2, 6])('with %d probes', (probes) => {
    const signals = only(simpleCase(grid, { probes }));
    expect(signals.probes).toHaveLength(probes);
    expect(signals.defrosts).toHaveLength(4 * days);
    expect(Number.isFinite(signals.level[3])).toBe(true);
  });

  test('a probe that never moves, or is hardly there, is not used', () => {
    const circuit = simpleCase(grid);
    const stuck = recordOf('M01 air D', 'temperature', new Float64Array(grid.count).fill(-17.2));
    const signals = only({
      ...circuit,
      probes: [...circuit.probes, { point: stuck.point, record: stuck, position: 3 }],
    });
    expect(signals.usable).toEqual([true, true, true, false]);
    expect(Math.abs(signals.level[4]!)).toBeLessThan(0.3);
  });

  test('without set point, valve, status or any air at all nothing fails', () => {
    const bare = only(simpleCase(grid, { columns: {} }));
    expect(bare.duty.every(Number.isNaN)).toBe(true);
    expect(bare.setPoint.every(Number.isNaN)).toBe(true);
    expect(bare.level[3]).toBeCloseTo(2.8, 0);
    const empty = only(circuitOf({ probes: [] }));
    expect(empty.defrostSource).toBe('none');
    expect(empty.level.every(Number.isNaN)).toBe(true);
    const nothing = recordOf(
      'M01 air A',
      'temperature',
      valuesOf(grid, () => Number.NaN),
    );
    expect(only(circuitOf({ probes: [nothing] })).defrosts).toEqual([]);
  });

  test('a log of a few hours has signals, if few', () => {
    const short = { ...gridOf(1), count: 200 };
    const log = handMadeLog({ days: 1, circuits: [simpleCase(short)] });
    const trimmed = {
      ...log,
      grid: short,
      calendar: { ...log.calendar, days: [{ ...log.calendar.days[0]!, to: 200 }] },
    };
    expect(computeSignals(trimmed).circuits[0]!.phase).toHaveLength(200);
  });
});

describe('a circuit that was shut off', () => {
  const from = 6 * 1440;
  test('is seen by its valve and its air', () => {
    const { offSpells } = only(
      simpleCase(grid, { isOff: (minute) => minute >= from && minute < from + 600 }),
    );
    expect(offSpells).toHaveLength(1);
    expect(Math.abs(offSpells[0]!.from - from)).toBeLessThan(15);
    expect(Math.abs(offSpells[0]!.to - from - 600)).toBeLessThan(5);
  });

  test('is seen by its air alone once that is far too warm', () => {
    const isOff = (minute: number) => minute >= from && minute < from + 900;
    const { offSpells } = only(simpleCase(grid, { isOff, columns: { setPoint: true } }));
    expect(offSpells).toHaveLength(1);
    expect(offSpells[0]!.from).toBeLessThan(from + 180);
  });
});

describe('steps of the set point', () => {
  const changed = (minute: number) => (minute < 7.4 * 1440 ? 2.8 : 4.5);
  test('are read from its column to the minute', () => {
    const { setPointSteps } = only(simpleCase(grid, { setPoint: changed }));
    expect(setPointSteps).toEqual([{ at: 7.4 * 1440, from: 2.8, to: 4.5, source: 'column' }]);
  });

  test('are inferred from all probes moving alike while the valve goes on working', () => {
    const { setPointSteps } = only(
      simpleCase(grid, { setPoint: changed, columns: { valve: true, status: true } }),
    );
    expect(setPointSteps).toHaveLength(1);
    expect(setPointSteps[0]!.source).toBe('level');
    expect(setPointSteps[0]!.to - setPointSteps[0]!.from).toBeCloseTo(1.7, 0);
    expect(Math.abs(setPointSteps[0]!.at - 7.4 * 1440)).toBeLessThan(120);
  });

  test('a circuit that can no longer hold its set point has made none', () => {
    const cooling = (minute: number) => (minute < 7.4 * 1440 ? 0.35 : 0.14);
    expect(only(simpleCase(grid, { cooling, columns: { valve: true, status: true } })).setPointSteps).toEqual(
      [],
    );
  });

  test('air that stands higher under a valve that feeds more has made none', () => {
    const load = (minute: number) => {
      const hour = (minute % 1440) / 60;
      if (minute < 7 * 1440) return 0.008;
      return hour > 8 && hour < 22 ? 0.02 : 0.006;
    };
    const signals = only(simpleCase(grid, { load, columns: { valve: true, status: true } }));
    expect(signals.level.at(-1)! - signals.level[2]!).toBeGreaterThan(1);
    expect(signals.duty.at(-1)!).toBeLessThan(0.95);
    expect(signals.setPointSteps).toEqual([]);
  });

  test('several circuits of a group that step at once have made none: that is the rack', () => {
    const circuits = ['M01', 'M02', 'M03'].map((id, i) =>
      simpleCase(grid, {
        id,
        seed: i + 1,
        suctionGroup: 'S1',
        setPoint: changed,
        columns: { valve: true, status: true },
      }),
    );
    const { circuits: signals } = computeSignals(handMadeLog({ days, circuits, suctionGroups: [groupOf()] }));
    expect(signals.flatMap((one) => one.setPointSteps)).toEqual([]);
  });
});

describe('a step of the level of one circuit alone', () => {
  const steps = (suctionRise: number, to = 4.5) => {
    const suction = (minute: number) => 429.1 * Math.exp(0.035 * (minute < 7.4 * 1440 ? 0 : suctionRise));
    const pressure = recordOf('S1 suction', 'pressure', valuesOf(grid, suction), { exportUnit: '[psi]' });
    const circuits = ['M01', 'M02', 'M03'].map((id, i) =>
      simpleCase(grid, {
        id,
        seed: i + 1,
        suctionGroup: 'S1',
        setPoint: (minute) => (id === 'M01' && minute >= 7.4 * 1440 ? to : 2.8),
        columns: { status: true },
      }),
    );
    const log = handMadeLog({ days, circuits, suctionGroups: [groupOf({ pressure })] });
    return computeSignals(log).circuits[0]!.setPointSteps;
  };

  test('is the rack’s, when the suction pressure stepped up with it', () => {
    expect(steps(2)).toEqual([]);
  });

  test('is its set point’s, when the suction held, went the other way, or went up by too little to do it', () => {
    for (const rise of [0, -2, 1]) expect(steps(rise)).toHaveLength(1);
    expect(steps(1.5, 6.5)).toHaveLength(1);
    expect(steps(-2, 1.1)).toHaveLength(1);
  });
});

describe('the others of the suction group', () => {
  test('move together when the rack does, and one circuit’s trouble does not pass to them', () => {
    const warmed = (id: string) => (minute: number) => (minute > 9 * 1440 && id === 'M01' ? 0.12 : 0.35);
    const circuits = ['M01', 'M02', 'M03', 'M04'].map((id, i) =>
      simpleCase(grid, { id, seed: i + 1, suctionGroup: 'S1', cooling: warmed(id) }),
    );
    const log = handMadeLog({ days, circuits, suctionGroups: [groupOf({ pressure: null })] });
    const [group] = computeSignals(log).groups;
    expect(group!.members).toEqual(['M01', 'M02', 'M03', 'M04']);
    expect(group!.departures.get('M01')![12]).toBeGreaterThan(2);
    expect(Math.abs(group!.peers.get('M02')![12]!)).toBeLessThan(0.3);
    expect(Math.abs(group!.peers.get('M01')![12]!)).toBeLessThan(0.3);
  });

  test('have a saturated suction temperature where the refrigerant is known', () => {
    const pressure = recordOf(
      'S1 suction',
      'pressure',
      valuesOf(grid, () => 429.1),
      { exportUnit: '[psi]' },
    );
    const at = (refrigerant: string | null) => {
      const suctionGroups = [groupOf({ pressure, refrigerant })];
      return computeSignals(handMadeLog({ days, circuits: [], suctionGroups })).groups[0]!
        .saturatedSuction[5]!;
    };
    // dew pressure of R-448A at −5 °C by CoolProp 8.0.1, mixture of Bell 2022
    expect(Math.abs(at('R-448A') + 5)).toBeLessThan(0.1);
    expect(at('R-999Z')).toBeNaN();
    expect(at(null)).toBeNaN();
  });
});
