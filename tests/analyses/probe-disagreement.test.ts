import { describe, expect, it } from 'vitest';
import { analyse } from '../../src/analyses/probe-disagreement/index.ts';
import { accusedProbes } from '../../src/analyses/probe-disagreement/votes.ts';
import type { Evidence } from '../../src/model/evidence.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { gridOf, groupOf, handMadeLog } from '../support/hand-made-log.ts';
import { dailyDefrosts, simpleCase } from '../support/simple-case.ts';
import { type Curve, handMadeStore, startMs, still } from './support/hand-made-store.ts';

const dayMs = 86_400_000;

function seen(probes: readonly Curve[], days = 16, minutes = 5): readonly Evidence[] {
  const signals = computeSignals(handMadeStore({ days, minutes, circuits: [{ id: 'M01', probes }] }));
  return analyse(signals.circuits[0]!, signals.groups[0]!, signals).evidence;
}

const stepAt =
  (day: number, size: number): Curve =>
  (now) =>
    now < day ? 0 : size;

describe('votes of pairs', () => {
  const days = (change: number): Float64Array =>
    Float64Array.from({ length: 20 }, (_, d) => (d < 10 ? 0 : change));

  it('name the probe that most of its pairs accuse, and none of its neighbours', () => {
    const pairs = [
      { first: 0, second: 1, days: days(2) },
      { first: 0, second: 2, days: days(2) },
      { first: 1, second: 2, days: days(0) },
    ];
    expect(accusedProbes(pairs, [0, 1, 2])).toEqual([{ probe: 0, votes: 1 }]);
  });

  it('name a second one after the first is taken out', () => {
    const shifts = [2, 0, -3, 0];
    const pairs = [0, 1, 2, 3].flatMap((first) =>
      [0, 1, 2, 3]
        .filter((second) => second > first)
        .map((second) => ({ first, second, days: days(shifts[first]! - shifts[second]!) })),
    );
    expect(accusedProbes(pairs, [0, 1, 2, 3]).map(({ probe }) => probe)).toEqual([2, 0]);
  });

  it('stay silent for less than the smallest shift, and speak just above it', () => {
    const pair = (change: number) => [{ first: 0, second: 1, days: days(change) }];
    expect(accusedProbes(pair(0.72), [0, 1])).toEqual([]);
    expect(accusedProbes(pair(0.78), [0, 1])).toEqual([{ probe: 0, votes: 1 }]);
  });
});

describe('probe disagreement', () => {
  it('is silent about probes that keep their places', () => {
    expect(seen([still, still, still])).toEqual([]);
  });

  it('puts a step within two hours', () => {
    const [step, ...others] = seen([still, stepAt(8.3, 2), still]);
    expect(others).toEqual([]);
    expect(step).toMatchObject({ probe: 'M01 air B', shape: 'step', end: null });
    expect(Math.abs(step!.onset - (startMs + 8.3 * dayMs))).toBeLessThanOrEqual(2 * 3_600_000);
    expect(step!.features.shift).toBeCloseTo(2, 1);
  });

  it('keeps the whole offset of a lying probe through defrost', () => {
    const [step] = seen([still, stepAt(8.3, 2), still]);
    expect(step!.features.defrostOffsetRatio).toBeCloseTo(1, 1);
    expect(step!.features.riseRatio).toBeCloseTo(1, 1);
    expect(Math.abs(step!.features.dayNightRatio!)).toBeLessThan(0.15);
  });

  it('sees that an iced end is colder than its neighbours late in defrost', () => {
    const ice: Curve = (day, defrost) => {
      const grown = Math.max(0, Math.min(1, (day - 7) / 4));
      return grown * (2 * (1 - defrost) - 3 * defrost);
    };
    const [creep] = seen([ice, still, still]);
    expect(creep).toMatchObject({ probe: 'M01 air A', shape: 'creep' });
    expect(creep!.features.defrostOffsetRatio).toBeLessThan(-1);
  });

  it('reports a probe that left its neighbours six hours before the end', () => {
    const [sudden] = seen([still, still, stepAt(15.75, 3)]);
    expect(sudden).toMatchObject({ probe: 'M01 air C', shape: 'step' });
    expect(Math.abs(sudden!.onset - (startMs + 15.75 * dayMs))).toBeLessThanOrEqual(2 * 3_600_000);
  });

  it('reports one that left within hours of a history of two and a half days, and is silent without', () => {
    const [sudden] = seen([still, still, stepAt(2.25, 3)], 2.5);
    expect(sudden).toMatchObject({ probe: 'M01 air C', shape: 'step' });
    expect(seen([still, still, still], 2.5)).toEqual([]);
  });

  it('judges a step by what came after it: the hours of its day before it do not count', () => {
    const alone = (step: Evidence) =>
      ['dayNightRatio', 'recoveryRatio'].filter((feature) => step.features[feature] !== undefined);
    for (const before of [0.9, 1.3]) {
      const lying = seen([still, stepAt(16 - before, 3), still])[0]!;
      expect(lying.features.defrostOffsetRatio).toBeCloseTo(1, 1);
      expect(lying.features.phaseCorrelation).toBeGreaterThan(0.95);
      expect(alone(lying)).toEqual(before < 1 ? [] : ['dayNightRatio']);
    }
  });

  it('reads from one defrost since a step what the scatter of those before it allows', () => {
    const after = (step: number) => seen([still, stepAt(step, 3), still])[0]!.features;
    const one = after(15.7);
    expect(one.defrostsUsed).toBe(1);
    expect(one.defrostOffsetRatio).toBeCloseTo(1, 1);
    expect(one.riseRatio).toBeCloseTo(1, 1);
    const many = after(8);
    expect(one.defrostOffsetRatioError).toBeGreaterThan(many.defrostOffsetRatioError!);
    expect(one.riseRatioError).toBeGreaterThan(0);
    expect(many.riseRatioError).toBeUndefined();
  });

  it('writes down the warm one of two, with a single pair to vote', () => {
    const [pair] = seen([stepAt(8, 2), still]);
    expect(pair).toMatchObject({ probe: 'M01 air A', shape: 'step' });
    expect(pair!.features.probes).toBe(2);
  });

  it('calls a reading that stands still through defrosts stuck, from the sample it stopped', () => {
    const log = handMadeStore({ days: 10, circuits: [{ id: 'M01', probes: [still, still, still] }] });
    const { values } = log.circuits[0]!.probes[1]!.record;
    const from = 1500;
    values.fill(values[from]!, from);
    const signals = computeSignals(log);
    const { evidence } = analyse(signals.circuits[0]!, signals.groups[0]!, signals);
    expect(evidence).toHaveLength(1);
    expect(evidence[0]).toMatchObject({ shape: 'stuck', probe: 'M01 air B' });
    expect(evidence[0]!.onset).toBe(startMs + from * log.grid.stepMs);
  });

  it.each([
    ['that trembles in its last digit through a day of defrosts stuck', 14, ['stuck']],
    ['that does so for less than a day nothing of the kind', 9.7, []],
  ])('calls a reading %s', (_, until, shapes) => {
    const log = handMadeStore({ days: 14, circuits: [{ id: 'M01', probes: [still, still, still] }] });
    const { values, resolution } = log.circuits[0]!.probes[1]!.record;
    const from = 9 * 288;
    const held = values[from]!;
    for (let i = from; i < until * 288; i++) values[i] = held + resolution * ((i * i) % 3) - resolution;
    const signals = computeSignals(log);
    const { evidence } = analyse(signals.circuits[0]!, signals.groups[0]!, signals);
    expect(evidence.filter(({ shape }) => shape === 'stuck').map(({ shape }) => shape)).toEqual(shapes);
  });

  it('dates one that now trembles and now does not by the whole stretch', () => {
    const log = handMadeStore({ days: 14, circuits: [{ id: 'M01', probes: [still, still, still] }] });
    const { values, resolution } = log.circuits[0]!.probes[1]!.record;
    const from = 9 * 288;
    const held = values[from]!;
    for (let i = from; i < values.length; i++) values[i] = held + (i % 7 === 0 ? resolution : 0);
    values.fill(held, 10 * 288, 10 * 288 + 100);
    const signals = computeSignals(log);
    const stuck = analyse(signals.circuits[0]!, signals.groups[0]!, signals).evidence;
    expect(stuck).toMatchObject([{ shape: 'stuck', onset: startMs + from * log.grid.stepMs, end: null }]);
  });

  it.each([
    ['between two defrosts good control', 1.5, 9.5, []],
    ['through a defrost a probe that stopped', 8, 16, ['stuck']],
  ])('calls hours of one reading in steps of half a kelvin %s', (_, fromHour, toHour, shapes) => {
    const days = 14;
    const made = simpleCase(gridOf(days, 5), {
      stepCelsius: 0.5,
      differential: 2.2,
      isDefrosting: dailyDefrosts([0, 720], 45),
    });
    const { values } = made.probes[1]!.record;
    values.fill(values[9 * 288 + fromHour * 12]!, 9 * 288 + fromHour * 12, 9 * 288 + toHour * 12);
    const log = handMadeLog({ days, stepMinutes: 5, circuits: [made], suctionGroups: [groupOf()] });
    const signals = computeSignals(log);
    const { evidence } = analyse(signals.circuits[0]!, signals.groups[0]!, signals);
    expect(evidence.filter(({ shape }) => shape === 'stuck').map(({ shape }) => shape)).toEqual(shapes);
  });

  it('calls a reading far from all neighbours that does not move open or short', () => {
    const log = handMadeStore({ days: 10, circuits: [{ id: 'M01', probes: [still, still, still] }] });
    log.circuits[0]!.probes[2]!.record.values.fill(66, 1500);
    const signals = computeSignals(log);
    const { evidence } = analyse(signals.circuits[0]!, signals.groups[0]!, signals);
    expect(evidence.map(({ shape, probe }) => [shape, probe])).toEqual([['open-or-short', 'M01 air C']]);
  });

  it('calls two probes that exchange their places at one moment swapped, and neither of them a liar', () => {
    const swap =
      (own: number, other: number): Curve =>
      (day) =>
        day < 8.2 ? own : other;
    const evidence = seen([swap(1, -0.6), swap(-0.6, 1), still, still]);
    expect(evidence.map(({ shape }) => shape)).toEqual(['swapped']);
    expect(evidence[0]!.points).toEqual(['M01 air A', 'M01 air B']);
  });

  it.each([
    ['at other levels', 5.5],
    ['at the same level', 2.8],
    ['of which one has half of its defrosts with the other', 3.4, [480, 1020], [120, 480, 840, 1200]],
  ])(
    'dates the exchange of two probes between circuits %s to the same minutes for both',
    (_, level, first = [120, 480, 840, 1200], second = [210, 570, 930, 1290]) => {
      const days = 14;
      const grid = gridOf(days, 5);
      const starts = [first, second, [60, 420, 780, 1140]];
      const made = [2.8, level, 2.8].map((setPoint, k) =>
        simpleCase(grid, {
          id: `M0${k + 1}`,
          seed: k + 1,
          suctionGroup: 'S1',
          setPoint: () => setPoint,
          isDefrosting: dailyDefrosts(starts[k]!, 45),
        }),
      );
      const [one, two] = [0, 1].map((c) => made[c]!.probes[1]!.record.values);
      const at = Math.round(8.2 * 288);
      const there = two!.slice(at);
      two!.set(one!.subarray(at), at);
      one!.set(there, at);
      const log = handMadeLog({ days, stepMinutes: 5, circuits: made, suctionGroups: [groupOf()] });
      const signals = computeSignals(log);
      for (const circuit of signals.circuits.slice(0, 2)) {
        const { evidence } = analyse(circuit, signals.groups[0]!, signals);
        const swapped = evidence.find(({ shape }) => shape === 'swapped')!;
        expect(swapped.probe).toBe(circuit.circuit.probes[1]!.point);
        expect(Math.abs(swapped.onset - (grid.startMs + at * grid.stepMs))).toBeLessThanOrEqual(20 * 60_000);
        expect(evidence.map(({ shape }) => shape)).not.toContain('flutter');
      }
      expect(analyse(signals.circuits[2]!, signals.groups[0]!, signals).evidence).toEqual([]);
    },
  );

  it('takes no probe whose fan stopped, or that iced, for one of a circuit whose defrosts it shares', () => {
    const days = 14;
    const grid = gridOf(days, 5);
    const isDefrosting = [0, 20].map((later) =>
      dailyDefrosts(
        [120, 480, 840, 1200].map((at) => at + later),
        45,
      ),
    );
    const made = isDefrosting.map((one, k) =>
      simpleCase(grid, {
        id: `M0${k + 1}`,
        seed: k + 1,
        suctionGroup: 'S1',
        setPoint: () => 2.8,
        isDefrosting: one,
      }),
    );
    const values = made[0]!.probes[1]!.record.values;
    // Warmer while it cools, and no warmer at the end of a defrost: as where the fan of one section stands.
    for (let i = Math.round(8.2 * 288); i < values.length; i++)
      if (values[i]! < 6) values[i] = values[i]! + 2 * (1 - Math.max(0, values[i]! - 3) / 3);
    const log = handMadeLog({ days, stepMinutes: 5, circuits: made, suctionGroups: [groupOf()] });
    const signals = computeSignals(log);
    const shapes = signals.circuits.flatMap((one) =>
      analyse(one, signals.groups[0]!, signals).evidence.map(({ shape }) => shape),
    );
    expect(shapes).toContain('step');
    expect(shapes).not.toContain('swapped');
  });

  it('sees flutter by its own quiet days, from the hour it began', () => {
    const jumps = [0.9, -0.9, 0.9, 0.9, -0.9];
    const shake: Curve = (day) => (day < 9.4 ? 0 : jumps[Math.round(day * 288) % 5]!);
    const flutter = seen([still, shake, still]).find(({ shape }) => shape === 'flutter');
    expect(flutter).toMatchObject({ probe: 'M01 air B' });
    expect(Math.abs(flutter!.onset - (startMs + 9.4 * dayMs))).toBeLessThanOrEqual(3 * 3_600_000);
  });

  it('names the one of two probes that flutters: its jumps are in neither the air nor the other', () => {
    const jumps = [0.9, -0.9, 0.9, 0.9, -0.9];
    const shake: Curve = (day) => (day < 9.4 ? 0 : jumps[Math.round(day * 288) % 5]!);
    for (const [probes, named] of [
      [[still, shake], 'M01 air B'],
      [[shake, still], 'M01 air A'],
    ] as const) {
      const found = seen(probes).filter(({ shape }) => shape === 'flutter');
      expect(found.map(({ probe }) => probe)).toEqual([named]);
    }
  });

  it('says creep of a slow straight rise and leaves step against creep open where the days do', () => {
    const slow: Curve = (day) => Math.max(0, 0.15 * (day - 3));
    const creep = seen([slow, still, still]).find(({ probe }) => probe === 'M01 air A');
    expect(creep).toMatchObject({ shape: 'creep' });
    expect(creep!.features.creeping).toBeGreaterThan(0.9);
    const jump: Curve = (day) => (day < 8 ? 0 : 2);
    const step = seen([jump, still, still]).find(({ probe }) => probe === 'M01 air A');
    expect(step).toMatchObject({ shape: 'step' });
    expect(step!.features.creeping).toBeLessThan(0.4);
  });

  it('calls what came while nothing was logged a step in the gap, no creep', () => {
    const away: Curve = (day) => (day < 6 ? 0 : day < 8 ? Number.NaN : 2);
    const gap: Curve = (day) => (day < 6 || day >= 8 ? 0 : Number.NaN);
    const found = seen([away, gap, gap]).find(({ probe }) => probe === 'M01 air A');
    expect(found).toMatchObject({ shape: 'step' });
    expect(found!.onset).toBeGreaterThanOrEqual(startMs + 5.9 * dayMs);
    expect(found!.onset).toBeLessThanOrEqual(startMs + 8.1 * dayMs);
  });

  it('takes no coarsely logged cycle for flutter where a neighbour ices and cycles less', () => {
    const cycle = (day: number): number => Math.sin((2 * Math.PI * day * 1440) / 16);
    const icing: Curve = (day, defrost) =>
      day < 6 ? 0 : Math.min(3, 0.4 * (day - 6)) * (1 - defrost) - 0.8 * cycle(day) * (1 - defrost);
    const driven: Curve = (day, defrost) => (day < 6 ? 0 : 0.6 * cycle(day) * (1 - defrost));
    expect(seen([icing, driven, driven]).filter(({ shape }) => shape === 'flutter')).toEqual([]);
    expect(seen([icing, driven]).filter(({ shape }) => shape === 'flutter')).toEqual([]);
  });

  it('keeps a flutter open that goes on, weaker than its cycle, to the end of the export', () => {
    const shake: Curve = (day) => (day < 9 ? 0 : 1.6 * (((Math.round(day * 288) * 7919) % 97) / 97 - 0.5));
    const flutter = seen([still, shake, still]).find(({ shape }) => shape === 'flutter');
    expect(flutter).toMatchObject({ probe: 'M01 air B', end: null });
  });

  // Common practice, no source: shoppers open glass doors, each for itself, and not between 01:00 and 05:00.
  it.each([
    ['glass doors that are opened in trading hours, one more than its neighbours at weekends', true, []],
    ['jumps of the same size that know no hours', false, ['M01 air B']],
  ])('%s', (_, onlyByDay, named) => {
    const opened =
      (stream: number, busy: number): Curve =>
      (day) => {
        const hour = (day % 1) * 24;
        if (onlyByDay && (hour < 7 || hour >= 22)) return 0;
        const isWeekend = Math.floor(day) % 7 >= 5;
        const chance = Math.sin(12.9898 * Math.round(day * 1440) + 78.233 * stream) * 43758.5453;
        return chance - Math.floor(chance) < (isWeekend ? busy : 0.1) ? 1.5 : 0;
      };
    const found = seen([opened(1, 0.1), opened(2, 0.4), opened(3, 0.1)], 14, 1);
    expect(found.filter(({ shape }) => shape === 'flutter').map(({ probe }) => probe)).toEqual(named);
  });

  it('has nothing to compare a single probe with, and says so', () => {
    const signals = computeSignals(handMadeStore({ days: 8, circuits: [{ id: 'M01', probes: [still] }] }));
    const { evidence, abstentions } = analyse(signals.circuits[0]!, signals.groups[0]!, signals);
    expect(evidence).toEqual([]);
    expect(abstentions[0]).toMatchObject({ circuit: 'M01', needs: 'a second air probe' });
  });

  it('says what half-hourly logging hides', () => {
    const log = handMadeStore({ days: 8, minutes: 30, circuits: [{ id: 'M01', probes: [still, still] }] });
    const signals = computeSignals(log);
    const { abstentions } = analyse(signals.circuits[0]!, signals.groups[0]!, signals);
    expect(abstentions[0]!.reason).toContain('30 min');
  });
});
