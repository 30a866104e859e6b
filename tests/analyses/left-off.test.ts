import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analyses/left-off/index.ts';
import { setPointsLeft } from '../../src/analyses/left-off/set-points.ts';
import type { CircuitSignals } from '../../src/signals/types.ts';
import { dayOfOnset, measureOf, verdictOf } from '../support/analyse-case.ts';
import { gridOf, groupOf, recordOf, valuesOf } from '../support/hand-made-log.ts';
import { dailyDefrosts, type SimpleCase, simpleCase } from '../support/simple-case.ts';

const days = 12;
const grid = gridOf(days);
const day = (minute: number) => minute / 1440;
const judge = (options: SimpleCase = {}) => verdictOf(analyse, [simpleCase(grid, options)], days);

describe('a circuit that was stopped', () => {
  test('and stayed so is off since the minute its valve shut, with what it did', () => {
    const { evidence } = judge({ isOff: (minute) => day(minute) > 9.5 });
    expect(evidence).toHaveLength(1);
    expect(evidence[0]!.shape).toBe('off');
    expect(evidence[0]!.end).toBeNull();
    expect(dayOfOnset(evidence[0]!)).toBeCloseTo(9.5, 1);
    expect(measureOf(evidence[0]!, 'hoursOff')).toBeCloseTo(60, -1);
    expect(evidence[0]!.features.defrostsMissed).toBeGreaterThanOrEqual(8);
  });

  test('is told by its air alone where no valve is logged, and the limits of that are said', () => {
    const { evidence, abstentions } = judge({
      isOff: (minute) => day(minute) > 9.5,
      columns: { setPoint: true },
    });
    expect(evidence.map((one) => one.shape)).toEqual(['off']);
    expect(abstentions[0]!.needs).toBe('the valve of the circuit');
  });

  test('and put back within hours was a visit', () => {
    expect(judge({ isOff: (minute) => day(minute) > 6 && day(minute) < 6.2 }).evidence).toEqual([]);
  });

  test('together with its group was a stop of the rack', () => {
    const isOff = (minute: number) => day(minute) > 6 && day(minute) < 6.7;
    const circuits = ['M01', 'M02', 'M03'].map((id, i) =>
      simpleCase(grid, { id, seed: i + 1, suctionGroup: 'S1', isOff }),
    );
    expect(verdictOf(analyse, circuits, days, 1, [groupOf()]).evidence).toEqual([]);
  });

  test('for most of a day and put back is remarked on, with its end', () => {
    const { evidence } = judge({ isOff: (minute) => day(minute) > 6 && day(minute) < 6.8 });
    expect(evidence.map((one) => one.shape)).toEqual(['was-off']);
    expect(evidence[0]!.end).not.toBeNull();
  });
});

describe('an override', () => {
  test('left on holds the valve open and the air under the set point', () => {
    const { evidence } = judge({ isForced: (minute) => day(minute) > 8.3 });
    expect(evidence.map((one) => one.shape)).toEqual(['override-on']);
    expect(Math.abs(dayOfOnset(evidence[0]!) - 8.3)).toBeLessThan(0.2);
    expect(measureOf(evidence[0]!, 'underCutOut')).toBeGreaterThan(0.5);
    expect(measureOf(evidence[0]!, 'airNow')).toBeLessThan(measureOf(evidence[0]!, 'setPoint') - 0.5);
  });

  // A case with so little to spare that a valve held open only just brings it under its set point.
  const scarce = {
    load: () => 0.024,
    cooling: (minute: number) => (Math.floor(day(minute) * 6) % 5 < 3 ? 0.4765 : 0.5),
    isDefrosting: dailyDefrosts([120, 840], 30),
    isForced: (minute: number) => day(minute) > 6.3,
  };

  test('is told of a case with little to spare by days of air under its usual level', () => {
    const { evidence } = judge(scarce);
    expect(evidence.map((one) => one.shape)).toEqual(['override-on']);
    expect(Math.abs(dayOfOnset(evidence[0]!) - 6.3)).toBeLessThan(0.5);
    expect(evidence[0]!.features.underShare).toBeLessThan(0.5);
    expect(measureOf(evidence[0]!, 'underUsual')).toBeGreaterThan(0.5);
  });

  // The coil frosts over days, and what was cold at first ends warm: two sections more than the third.
  const frosting = {
    isDefrosting: (minute: number) => day(minute) < 6 && dailyDefrosts([120, 480, 840, 1200], 45)(minute),
    cooling: (minute: number, probe: number) =>
      Math.max(0.1, 0.35 - (probe < 2 ? 0.09 : 0.07) * Math.max(0, day(minute) - 6.5)),
    columns: { valve: true, status: true },
  };

  test('that lets no defrost come either is told although the air has climbed since', () => {
    const { evidence } = judge({ ...frosting, isForced: (minute) => day(minute) > 6 });
    expect(evidence.map((one) => one.shape)).toEqual(['override-on']);
    expect(evidence[0]!.features).toMatchObject({ inCooling: 1, defrostsSeen: 0 });
    expect(evidence[0]!.features.climbed).toBeGreaterThan(1);
    expect(Math.abs(dayOfOnset(evidence[0]!) - 6)).toBeLessThan(0.2);
  });

  // Frost that each defrost clears in part: what was cold on the first day ends near its usual level, and one end above it.
  const partlyCleared = {
    cooling: (minute: number, probe: number) =>
      Math.max(probe === 0 ? 0.14 : 0.17, 0.35 - 0.12 * Math.max(0, day(minute) - 6.8)),
    isForced: (minute: number) => day(minute) > 6,
  };

  test('is told by its first half day where the coil frosts in spite of its defrosts', () => {
    const { evidence } = judge(partlyCleared);
    expect(evidence.map((one) => one.shape)).toEqual(['override-on']);
    expect(evidence[0]!.features).toMatchObject({ beganCold: 1 });
    expect(evidence[0]!.features.climbed).toBeGreaterThan(0);
    expect(Math.abs(dayOfOnset(evidence[0]!) - 6)).toBeLessThan(0.2);
    const { cooling } = partlyCleared;
    expect(judge({ cooling }).evidence).toEqual([]);
  });

  test('of a circuit whose valve nobody logs is told by air that stopped cycling and stands cold', () => {
    const seen = (options: SimpleCase) => judge({ columns: { status: true }, ...options }).evidence;
    const forced = seen({ isForced: (minute) => day(minute) > 6.4, cooling: () => 0.2 });
    expect(forced.map((one) => one.shape)).toEqual(['override-on']);
    expect(Math.abs(dayOfOnset(forced[0]!) - 6.4)).toBeLessThan(0.1);
    expect(forced[0]!.features.cycleLeft).toBeLessThan(0.4);
    // A colder set point cycles on; a coil that cannot keep up feeds all the time and is warm.
    const colder = seen({ setPoint: (minute) => (day(minute) > 6.4 ? 0.8 : 2.8) });
    expect(colder.map((one) => one.shape)).not.toContain('override-on');
    expect(seen({ cooling: (minute) => (day(minute) > 6.4 ? 0.13 : 0.35) })).toEqual([]);
  });

  test('of a valve whose position is not that of its override is told by days far under the set point that is logged', () => {
    const circuit = simpleCase(grid, { isForced: (minute) => day(minute) > 3 });
    const position = recordOf(
      'M01 valve',
      'fraction',
      valuesOf(grid, (minute) => 0.45 + 0.1 * Math.sin(minute / 50)),
    );
    const { evidence } = verdictOf(analyse, [{ ...circuit, valve: position }], days);
    expect(evidence.map((one) => one.shape)).toEqual(['override-on']);
    expect(Math.abs(dayOfOnset(evidence[0]!) - 3)).toBeLessThan(0.3);
  });

  test('is one stretch where the end of each defrost hides a part of two hours', () => {
    const circuit = simpleCase(grid, { isForced: (minute) => day(minute) > 8.3 });
    const values = circuit.valve!.values.map((open, i) =>
      [525, 530, 540, 545, 550].some((at) => i % 720 >= at - 240 && i % 720 < at - 237) ? 0 : open,
    );
    const valve = { ...circuit.valve!, values };
    expect(verdictOf(analyse, [{ ...circuit, valve }], days).evidence).toHaveLength(1);
  });

  test('is not a coil that frosts because its defrosts stopped: there the air is warm before the valve stays open', () => {
    expect(judge(frosting).evidence).toEqual([]);
  });

  test('is not a valve that stays open for a warm coil which defrosts as ever', () => {
    const { cooling, columns } = frosting;
    expect(judge({ cooling, columns }).evidence).toEqual([]);
  });

  test('is not a valve that is open because the case is warm', () => {
    const cooling = (minute: number) => (day(minute) < 8 ? 0.35 : 0.14);
    expect(judge({ cooling }).evidence).toEqual([]);
  });

  test('is not a valve that one warm reading drives while the others freeze', () => {
    const offset = (minute: number, probe: number) => (probe === 0 && day(minute) > 8 ? 12 : 0);
    expect(judge({ offset }).evidence).toEqual([]);
  });

  test('is not a set point that was lowered', () => {
    const { evidence } = judge({ setPoint: (minute) => (day(minute) < 8 ? 2.8 : 0.5) });
    expect(evidence.map((one) => one.shape)).toEqual(['set-point-changed']);
  });
});

describe('a set point', () => {
  // After a service visit every circuit must be back on and its set point back at the old value: common practice, no
  // source.
  const visit = (minute: number) => day(minute) > 6 && day(minute) < 6.1;
  test('changed at a visit and not put back is told, with both values', () => {
    const setPoint = (minute: number) => (day(minute) < 6.05 ? 2.8 : 5);
    const { evidence } = judge({ isOff: visit, setPoint });
    expect(evidence.map((one) => one.shape)).toEqual(['set-point-left']);
    expect(measureOf(evidence[0]!, 'setPointChange')).toBeCloseTo(2.2, 6);
  });

  test('changed while it stood for hours in what was inferred as a defrost was changed at a visit', () => {
    const circuit = simpleCase(grid);
    const window = (from: number, minutes: number, source: string) => ({ from, to: from + minutes, source });
    const seen = (minutes: number, source: string) =>
      setPointsLeft({
        circuit,
        log: { grid },
        offSpells: [],
        defrosts: [window(1000, 22, source), window(2000, 20, source), window(3000, minutes, source)],
        setPointSteps: [{ at: 3020, from: 2, to: 4, source: 'level' }],
      } as unknown as CircuitSignals).map(({ shape }) => shape);
    expect(seen(145, 'shape')).toEqual(['set-point-left']);
    expect(seen(40, 'shape')).toEqual([]);
    expect(seen(145, 'status')).toEqual([]);
  });

  test('read from the level is as far off as its steps, whatever the air did between them', () => {
    const circuit = simpleCase(grid);
    const at = 3020;
    const seen = (second: { readonly from: number; readonly to: number }) =>
      setPointsLeft({
        circuit,
        log: { grid },
        offSpells: [{ from: 2900, to: 3000 }],
        defrosts: [],
        setPointSteps: [
          { at, from: 2, to: 4, source: 'level' },
          { at: at + 5000, ...second, source: 'level' },
        ],
      } as unknown as CircuitSignals).map((one) => measureOf(one, 'setPointChange'));
    expect(seen({ from: 9, to: 10 })).toEqual([3]);
    expect(seen({ from: 9, to: 7.1 })).toEqual([]);
  });

  test('changed at a visit and put back is not', () => {
    const setPoint = (minute: number) => (day(minute) > 6.05 && day(minute) < 7 ? 5 : 2.8);
    expect(judge({ isOff: visit, setPoint }).evidence).toEqual([]);
  });

  test('changed while the air climbed as under work is told without a valve column too, a bare change is another matter', () => {
    const columns = { setPoint: true };
    const setPoint = (minute: number) => (day(minute) < 6.05 ? 2.8 : 5);
    const shapes = (options: SimpleCase) =>
      judge({ columns, setPoint, ...options }).evidence.map((one) => one.shape);
    expect(shapes({ isOff: visit, load: (minute) => (visit(minute) ? 0.02 : 0.008) })).toEqual([
      'set-point-left',
    ]);
    expect(shapes({})).toEqual(['set-point-changed']);
  });

  test('raised on a case that stands above it is no visit: the air follows the set point', () => {
    const circuit = simpleCase(grid, { columns: { setPoint: true } });
    const setPoint = valuesOf(grid, (minute) => (day(minute) < 8.05 ? 2.8 : 4.3));
    const above = (minute: number) => (day(minute) < 7 ? 0 : 3.2);
    const probes = circuit.probes.map((probe) => ({
      ...probe,
      record: {
        ...probe.record,
        values: probe.record.values.map((value, i) => value + setPoint[i]! - 2.8 + above(i)),
      },
    }));
    const warm = { ...circuit, probes, setPoint: recordOf('M01 set point', 'temperature', setPoint) };
    const shapes = verdictOf(analyse, [warm], days).evidence.map(({ shape }) => shape);
    expect(shapes).not.toContain('set-point-left');
  });
});

describe('a set point with no visit near', () => {
  const changed = (minute: number) => (day(minute) < 6.42 ? 2.8 : 5);
  const unlogged = { valve: true, status: true };
  const shapes = (options: SimpleCase) => judge(options).evidence.map(({ shape }) => shape);

  test('that went to another value is remarked on, with both', () => {
    const { evidence } = judge({ setPoint: changed });
    expect(evidence.map(({ shape }) => shape)).toEqual(['set-point-changed']);
    expect(measureOf(evidence[0]!, 'setPointBefore')).toBeCloseTo(2.8, 6);
    expect(measureOf(evidence[0]!, 'setPointNow')).toBeCloseTo(5, 6);
    expect(dayOfOnset(evidence[0]!)).toBeCloseTo(6.42, 2);
  });

  test('is read from the air where nothing logs it, up and down', () => {
    const { evidence } = judge({ setPoint: changed, columns: unlogged });
    expect(evidence.map(({ shape }) => shape)).toEqual(['set-point-changed']);
    expect(evidence[0]!.features.fromColumn).toBe(0);
    expect(measureOf(evidence[0]!, 'setPointChange')).toBeCloseTo(2.2, 0);
    expect(Math.abs(dayOfOnset(evidence[0]!) - 6.42)).toBeLessThan(2 / 24);
    expect(measureOf(evidence[0]!, 'feedingNow')).toBeLessThan(measureOf(evidence[0]!, 'feedingBefore'));
    const lowered = judge({ setPoint: (minute) => 7.8 - changed(minute), columns: unlogged }).evidence;
    expect(lowered.map(({ shape }) => shape)).toEqual(['set-point-changed']);
    expect(measureOf(lowered[0]!, 'setPointChange')).toBeCloseTo(-2.2, 0);
  });

  test.each<[string, SimpleCase]>([
    ['that came back', { setPoint: (minute) => (day(minute) > 6 && day(minute) < 9 ? 5 : 2.8) }],
    ['that goes up every night', { setPoint: (minute) => (day(minute) % 1 > 0.9 ? 5 : 2.8) }],
    ['that is set a little colder', { setPoint: (minute) => (day(minute) < 6 ? 2.8 : 2) }],
    ['that went up yesterday', { setPoint: (minute) => (day(minute) < 10.5 ? 2.8 : 5) }],
    [
      'of a coil that lacks liquid',
      { cooling: (minute) => (day(minute) < 6 ? 0.35 : 0.14), columns: unlogged },
    ],
    [
      'of a case that is loaded all through the trading day',
      {
        load: (minute) =>
          day(minute) < 6 ? 0.008 : day(minute) % 1 > 0.33 && day(minute) % 1 < 0.9 ? 0.02 : 0.006,
        columns: unlogged,
      },
    ],
    [
      'of a case that warms little by little',
      { offset: (minute) => -Math.max(0, day(minute) - 4) / 3, columns: unlogged },
    ],
  ])('is not said of one %s', (_, options) => {
    expect(shapes(options)).toEqual([]);
  });

  test('of circuits that all step at once is not the set point of one of them', () => {
    const circuits = ['M01', 'M02', 'M03'].map((id, i) =>
      simpleCase(grid, { id, seed: i + 1, suctionGroup: 'S1', setPoint: changed, columns: unlogged }),
    );
    expect(verdictOf(analyse, circuits, days, 1, [groupOf()]).evidence).toEqual([]);
  });
});
