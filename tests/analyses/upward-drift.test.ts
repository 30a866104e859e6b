import { describe, expect, it } from 'vitest';
import { analyse } from '../../src/analyses/upward-drift/index.ts';
import { projectToLimit } from '../../src/analyses/upward-drift/projection.ts';
import { findRise } from '../../src/analyses/upward-drift/rise.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { gridOf, groupOf, handMadeLog } from '../support/hand-made-log.ts';
import { type SimpleCase, simpleCase } from '../support/simple-case.ts';
import { type HandMadeCircuit, handMadeStore, startMs, still } from './support/hand-made-store.ts';

const dayMs = 86_400_000;

/** Repeatable scatter of about 0.1 K. */
const scatter = (day: number): number => 0.15 * Math.sin(7.3 * day * day + day);
const series = (length: number, at: (day: number) => number): Float64Array =>
  Float64Array.from({ length }, (_, day) => at(day) + scatter(day));

describe('findRise', () => {
  it('finds a slow rise over the whole history and its slope inside the interval', () => {
    const rise = findRise(series(28, (day) => 0.08 * day))!;
    expect(rise.shape).toBe('creep');
    expect(rise.slopeLow).toBeLessThan(0.08);
    expect(rise.slopeHigh).toBeGreaterThan(0.08);
    expect(rise.plainProbability).toBeLessThan(0.001);
    expect(rise.correctedProbability).toBeGreaterThanOrEqual(rise.plainProbability);
  });

  it('finds a rise of the last days, to which the trend test is blind', () => {
    const rise = findRise(series(28, (day) => Math.max(0, 0.5 * (day - 23))))!;
    expect(Math.abs(rise.ramp.start - 23)).toBeLessThanOrEqual(1);
  });

  it('ignores what came and went, what falls, and what is smaller than its setting', () => {
    expect(findRise(series(28, (day) => (day > 8 && day < 14 ? 2 : 0)))).toBeNull();
    expect(findRise(series(28, (day) => -0.1 * day))).toBeNull();
    expect(findRise(series(28, (day) => 0.7 * (day / 27)))).toBeNull();
    expect(findRise(series(28, (day) => (day / 27) * 1.1))).not.toBeNull();
  });

  it('asks for more where fewer than five days came before', () => {
    const stepAt = (day: number) => findRise(series(28, (now) => (now < day ? 0 : 1.1)));
    expect(stepAt(12)).not.toBeNull();
    expect(stepAt(2)).toBeNull();
  });

  it('knows a step from a creep, and a creep that has levelled off', () => {
    expect(findRise(series(28, (day) => (day < 14 ? 0 : 2)))!.shape).toBe('step');
    const levelled = findRise(series(28, (day) => Math.min(2, Math.max(0, 0.4 * (day - 8)))))!;
    expect([levelled.shape, levelled.levelled]).toEqual(['creep', true]);
  });
});

describe('a whole circuit that warms at once', () => {
  const days = 20;
  const grid = gridOf(days, 5);
  const day = (minute: number) => minute / 1440;
  const onset = 11.6;
  const since = (minute: number) => Math.max(0, day(minute) - onset);
  const isTrading = (minute: number) => minute % 1440 >= 480 && minute % 1440 < 1260;
  const riseOf = (options: SimpleCase) => {
    const circuits = ['M01', 'M02', 'M03'].map((id, i) =>
      simpleCase(grid, { id, seed: i + 1, suctionGroup: 'S1', ...(i === 0 ? options : {}) }),
    );
    const log = handMadeLog({ days, stepMinutes: 5, circuits, suctionGroups: [groupOf()] });
    const signals = computeSignals(log);
    const { evidence } = analyse(signals.circuits[0]!, signals.groups[0]!, signals);
    return evidence.find(({ probe, shape }) => probe === null && shape !== 'duty')!;
  };
  const hoursOff = (at: number) => Math.abs((at - grid.startMs) / dayMs - onset) * 24;

  // A door that stays open: the load is another within the minute, and frost goes on gathering for two days.
  const doorOpen: SimpleCase = {
    load: (minute) => (since(minute) > 0 ? 0.024 + 0.003 * Math.min(2, since(minute)) : 0.008),
  };

  it('is a step, dated to the hours in which it began, though frost goes on for days', () => {
    const found = riseOf(doorOpen);
    expect(found.shape).toBe('step');
    expect(found.features.sudden).toBe(1);
    expect(hoursOff(found.onset)).toBeLessThanOrEqual(2);
  });

  it('needs no valve for it where most of the rise came at once', () => {
    const found = riseOf({
      load: (minute) => (since(minute) > 0 ? 0.024 : 0.008),
      columns: { status: true, setPoint: true },
    });
    expect(found.features.sudden).toBe(1);
    expect(hoursOff(found.onset)).toBeLessThanOrEqual(2);
  });

  it.each<[string, SimpleCase]>([
    ['that takes three days', { load: (minute) => 0.008 + 0.006 * Math.min(3, since(minute)) }],
    [
      'that takes four days, most of it in trading hours',
      { load: (minute) => 0.008 + (isTrading(minute) ? 0.005 : 0.002) * Math.min(4, since(minute)) },
    ],
    [
      'of a coil that is starved over two days',
      { cooling: (minute) => 0.35 - 0.13 * Math.min(2, since(minute)) },
    ],
  ])('is not told of a rise %s', (_, options) => {
    expect(riseOf(options).features.sudden).toBeUndefined();
  });
});

describe('projectToLimit', () => {
  const onsetDay = 8;
  const rising = series(24, (day) => 2 + Math.max(0, 0.1 * (day - onsetDay)));
  const rise = { onsetDay, levelled: false };

  it('carries the present rate on, gathering by its setting', () => {
    const even = Float64Array.from({ length: 24 }, (_, day) => 2 + Math.max(0, 0.1 * (day - onsetDay)));
    const found = projectToLimit(even, 5, rise);
    // By hand: 1.5 K are left at 0.1 K a day: ln(1 + 1.5 · 0.12 ÷ 0.1) ÷ 0.12 = 8.6 days with a rate that gathers.
    expect(Math.abs(found.days! - 8.6)).toBeLessThan(1.5);
    expect(found.levelNow).toBeCloseTo(3.5, 0);
    expect(found.earliest!).toBeLessThan(7);
    expect(found.reason).toBeNull();
  });

  it('leaves the late end open while much of the way is left, for it may stop before; then it is longer than the early one', () => {
    const open = projectToLimit(rising, 5.5, rise);
    expect(open.days).not.toBeNull();
    expect(open.earliest!).toBeLessThan(open.days!);
    expect(open.latest).toBeNull();
    const { days, earliest, latest } = projectToLimit(rising, 4.7, rise);
    expect(latest! - days!).toBeGreaterThan(days! - earliest!);
  });

  it('stands where the air stands, and has reached nothing, when a creep has bent and holds just below its limit', () => {
    for (let length = 24; length < 60; length++) {
      const held = series(length, (day) => 2 + 2.6 * Math.min(1, Math.max(0, day - onsetDay) / 12));
      const found = projectToLimit(held, 5, rise);
      expect(Math.abs(found.levelNow - 4.6)).toBeLessThan(0.4);
      expect(found.days ?? 1).toBeGreaterThan(0);
    }
  });

  it('takes no fit that runs ahead of the last known day for a limit that is reached', () => {
    const steep = Float64Array.of(-1.8, -1.8, -1.7, -1.8, -1.8, -1.7, -1.8, -1.8, -1.7, -1.3, -0.2, 1.4, 4.3);
    const withGap = Float64Array.from([...steep, Number.NaN]);
    for (const days of [steep, withGap]) {
      const found = projectToLimit(days, 5, { onsetDay: 7, levelled: false });
      expect(found.levelNow).toBeLessThan(5);
      expect(found.latest!).toBeGreaterThan(0);
    }
    // A day that is not known yet is a day nearer to it.
    const ahead = (days: Float64Array) => projectToLimit(days, 7, { onsetDay: 7, levelled: false }).days!;
    expect(ahead(steep) - ahead(withGap)).toBeCloseTo(1, 9);
  });

  it('follows a rise that goes faster than it did, where one straight line would lag behind', () => {
    const gathering = series(24, (day) => 2 + 0.012 * Math.max(0, day - onsetDay) ** 2);
    const found = projectToLimit(gathering, 6, rise);
    // On the parabola the limit is met √(4 ÷ 0.012) − 15 = 3.3 days after the last of the 24.
    expect(found.earliest!).toBeLessThan(3.3);
    expect(found.latest ?? Number.POSITIVE_INFINITY).toBeGreaterThan(3.3);
    expect(Math.abs(found.days! - 3.3)).toBeLessThan(1.5);
  });

  it('is less sure of a rise that scatters more, and of one further off', () => {
    const width = (days: Float64Array, limit: number): number => {
      const found = projectToLimit(days, limit, rise);
      expect(found.days).not.toBeNull();
      return (found.latest ?? Number.POSITIVE_INFINITY) - found.earliest!;
    };
    const rough = Float64Array.from(rising, (value, day) => value + (day % 2 === 0 ? 0.25 : -0.25));
    expect(width(rough, 3.85)).toBeGreaterThan(width(rising, 3.85));
    expect(width(rising, 4)).toBeGreaterThan(width(rising, 3.8));
  });

  it.each([
    ['it is too young', { ...rise, onsetDay: 21 }, rising, 5],
    ['its slope may be zero', rise, series(24, (day) => 3 - 0.02 * day), 5],
    ['it has levelled off', { ...rise, levelled: true }, rising, 5],
    ['its control still holds it', { ...rise, held: true }, rising, 5],
    ['the limit is further off than twice the history', rise, rising, 30],
  ])('gives no date when %s, and says why', (_, given, days, limit) => {
    const found = projectToLimit(days, limit, given);
    expect([found.days, found.earliest, found.latest]).toEqual([null, null, null]);
    expect(found.reason).toMatch(/reliable date|levelled off/);
  });

  it('gives no date for a rise that is slowing down', () => {
    const bending = series(24, (day) => 2 + 2 * (1 - Math.exp(-Math.max(0, day - onsetDay) / 3)));
    const found = projectToLimit(bending, 5, rise);
    expect(found).toMatchObject({ days: null, reason: 'it is slowing down: no reliable date' });
  });

  it('says since when a limit is passed', () => {
    const found = projectToLimit(rising, 3, rise);
    expect(found.days!).toBeLessThanOrEqual(-3);
    expect(found.earliest!).toBeLessThan(found.days!);
  });

  it.each([0.8, 1, 1.3, 1.7])(
    'covers the true day in nine of ten creeps that go as time to the %s',
    (bend) => {
      let covered = 0;
      let dated = 0;
      for (let k = 0; k < 160; k++) {
        const jitter = (day: number): number =>
          0.2 * Math.sin(12.9898 * (day + 1) * (k + 3)) * Math.cos(k + 5.1 * day);
        const level = (day: number): number => 2 + 3 * (Math.max(0, day - 9) / 25) ** bend;
        const days = Float64Array.from({ length: 24 }, (_, day) => level(day) + jitter(day));
        const found = findRise(days.map((value) => value - 2));
        if (found === null) continue;
        const date = projectToLimit(days, 5, { onsetDay: found.ramp.start, levelled: found.levelled });
        if (date.days === null) continue;
        dated++;
        const truth = 9 + 25 - 23;
        if (date.earliest! <= truth && truth <= (date.latest ?? truth)) covered++;
      }
      expect(dated).toBeGreaterThan(60);
      expect(covered / dated).toBeGreaterThan(0.85);
    },
  );
});

describe('upward drift', () => {
  const quiet = (id: string): HandMadeCircuit => ({ id, probes: [still, still, still] });
  const seen = (circuits: readonly HandMadeCircuit[], days = 20) => {
    const signals = computeSignals(handMadeStore({ days, circuits }));
    return signals.circuits.map((one) => analyse(one, signals.groups[0]!, signals).evidence);
  };
  type Curve = HandMadeCircuit['probes'][number];
  const creep = (day: number): number => Math.max(0, Math.min(3, 0.4 * (day - 9)));

  it('sees a circuit whose air goes up while its neighbours do not', () => {
    const [own, ...others] = seen([{ ...quiet('M01'), together: creep }, quiet('M02'), quiet('M03')]);
    expect(others.flat()).toEqual([]);
    expect(own!.map(({ probe, shape }) => [probe, shape])).toEqual([[null, 'creep']]);
    expect(Math.abs(own![0]!.onset - (startMs + 9 * dayMs))).toBeLessThan(1.5 * dayMs);
  });

  it('sees one that runs away in the last two days of the log', () => {
    const away = (day: number): number => (day < 8 ? 0 : 0.7) + Math.max(0, 2.6 * (day - 18));
    const [own, ...others] = seen([{ ...quiet('M01'), together: away }, quiet('M02'), quiet('M03')]);
    expect(own).toMatchObject([{ circuit: 'M01', probe: null, end: null, shape: 'step' }]);
    expect(others.flat()).toEqual([]);
  });

  it('takes no notice of what all circuits of the group feel', () => {
    const humid = (id: string): HandMadeCircuit => ({ ...quiet(id), together: creep });
    expect(seen(['M01', 'M02', 'M03', 'M04'].map(humid)).flat()).toEqual([]);
  });

  it('names the probe that leaves all its neighbours, not the neighbours of one that reads cold', () => {
    const [warm] = seen([{ id: 'M01', probes: [creep, still, still] }, quiet('M02'), quiet('M03')]);
    expect(warm!.map(({ probe }) => probe)).toEqual(['M01 air A']);
    const cold = (day: number): number => -creep(day);
    const [others] = seen([{ id: 'M01', probes: [cold, still, still] }, quiet('M02'), quiet('M03')]);
    expect(others!.filter(({ probe }) => probe !== null)).toEqual([]);
  });

  it('sees a circuit that warms in trading hours only, which a daily median hides, and not when all do', () => {
    const trading = (day: number) => (day > 7 && day % 1 > 0.4 && day % 1 < 0.8 ? 2.5 : 0);
    const circuits = (shared: boolean): HandMadeCircuit[] =>
      ['M01', 'M02', 'M03', 'M04'].map((id) => ({
        id,
        probes: [still, still],
        ...(shared || id === 'M01' ? { together: trading } : {}),
      }));
    const verdicts = (shared: boolean) => {
      const site = computeSignals(handMadeStore({ days: 16, circuits: circuits(shared) }));
      return site.circuits.flatMap((one) => analyse(one, site.groups[0]!, site).evidence);
    };
    const found = verdicts(false);
    expect(found.map(({ circuit, shape }) => [circuit, shape])).toEqual([['M01', 'trading-hours']]);
    expect(Math.abs((found[0]!.onset - startMs) / dayMs - 7.5)).toBeLessThan(1.1);
    expect(found[0]!.measures[0]!.value).toBeGreaterThan(2);
    expect(Math.abs(found[0]!.measures[1]!.value)).toBeLessThan(0.3);
    expect(verdicts(true)).toEqual([]);
    expect(found[0]!.features.nightRecoveryRise).toBeLessThan(4);
  });

  it('says of one that warms in trading hours how much later it comes back from the defrosts of the night', () => {
    const trading = (day: number) => (day > 7 && day % 1 > 0.4 && day % 1 < 0.8 ? 2.5 : 0);
    // Its defrosts end at 05:45, 11:45, 17:45 and 23:45.
    const afterDefrost = (day: number) => Math.max(0, 6 - ((((day * 1440) % 360) - 345 + 360) % 360) / 8);
    const later = (day: number) => (day > 7 ? afterDefrost(day) : 0);
    const site = computeSignals(
      handMadeStore({
        days: 16,
        circuits: ['M01', 'M02', 'M03', 'M04'].map((id) => ({
          id,
          probes: [still, still],
          ...(id === 'M01' ? { together: (day: number) => trading(day) + later(day) } : {}),
        })),
      }),
    );
    const warm = analyse(site.circuits[0]!, site.groups[0]!, site).evidence;
    expect(warm.map(({ shape }) => shape)).toEqual(['trading-hours']);
    expect(warm[0]!.features.nightRecoveryRise).toBeGreaterThan(10);
    expect(warm[0]!.features.nightRecoveryRatio).toBeGreaterThan(1.5);
  });

  it('says how its defrosts answer: slower over a coil that ices, as ever over one that lacks liquid', () => {
    const rise = (day: number): number => Math.max(0, Math.min(3, 0.5 * (day - 9)));
    const answerOf = (inDefrost: number) => {
      const together: Curve = (day, defrost) => rise(day) * (1 + inDefrost * defrost);
      const [own] = seen([{ ...quiet('M01'), together }, quiet('M02'), quiet('M03')]);
      return own!.find(({ probe }) => probe === null)!.features;
    };
    const iced = answerOf(-7 / 6);
    const starved = answerOf(0);
    // The rise of the case is halved; the cycle that the fastest rise begins in is not.
    expect(iced.riseRateRatio!).toBeLessThan(0.8);
    expect(starved.riseRateRatio!).toBeCloseTo(1, 1);
    expect(iced.riseRateRatioError!).toBeLessThan(0.1);
    expect(iced.peakLag!).toBeLessThan(-2.5);
    expect(Math.abs(starved.peakLag!)).toBeLessThan(0.5);
    // The clock ends these defrosts: their length says nothing.
    expect(iced.defrostLengthRatio).toBeUndefined();
  });

  it.each([
    ['cycled before', (day: number) => (day < 9.625 ? 0.4 : 1)],
    ['fed all the time before, so that it bears no witness', () => 1],
  ])('dates a circuit that warmed within an hour to it, whose valve %s', (_, duty) => {
    const together: Curve = (day) => (day < 9.625 ? 0 : 6);
    const [own] = seen([{ ...quiet('M01'), together, duty }, quiet('M02'), quiet('M03')]);
    expect(own![0]).toMatchObject({ shape: 'step', features: { sudden: 1 } });
    expect(Math.abs((own![0]!.onset - startMs) / dayMs - 9.625)).toBeLessThan(0.1);
  });

  it('asks the return air whether more heat comes in: farther over the discharge air than before, or as ever', () => {
    const answerOf = (gap: Curve) => {
      const log = handMadeStore({
        days: 20,
        circuits: [{ ...quiet('M01'), together: creep, returnGap: gap }, quiet('M02'), quiet('M03')],
      });
      const signals = computeSignals(log);
      return analyse(signals.circuits[0]!, signals.groups[0]!, signals).evidence[0]!.features;
    };
    const wide = answerOf((day) => (day < 9 ? 5 : 12));
    expect(Math.exp(wide.returnGapLog!)).toBeCloseTo(2.4, 1);
    expect(wide.returnGapLogError!).toBeLessThan(0.05);
    expect(answerOf(() => 5).returnGapLog!).toBeCloseTo(0, 1);
    // A channel that stands on the discharge air has no distance to compare, and most circuits log none.
    expect(answerOf(() => 0.1).returnGapLog).toBeUndefined();
    const [plain] = seen([{ ...quiet('M01'), together: creep }, quiet('M02'), quiet('M03')]);
    expect(plain![0]!.features.returnGapLog).toBeUndefined();
  });

  it('gives no date for a place that its control holds by driving the neighbours colder', () => {
    const reasonOf = (own: Curve, others: Curve) => {
      const [evidence] = seen([{ id: 'M01', probes: [own, others, others] }, quiet('M02'), quiet('M03')]);
      return evidence!.find(({ probe }) => probe === 'M01 air A')!.projection!.reason;
    };
    const rise = (day: number): number => Math.max(0, 0.2 * (day - 9));
    expect(reasonOf(still, (day) => -rise(day))).toMatch(/control still holds it/);
    expect(reasonOf(rise, still) ?? '').not.toMatch(/control still holds it/);
  });

  it('leaves a last day out of which only the night is logged, when it says where the air stands and when it gets there', () => {
    const rise = (day: number): number => Math.max(0, 0.25 * (day - 9));
    const projectionOf = (days: number, together: Curve) => {
      const [own] = seen([{ ...quiet('M01'), together }, quiet('M02'), quiet('M03')], days);
      return own!.find(({ probe }) => probe === null)!.projection!;
    };
    const whole = projectionOf(20, rise);
    const cold = projectionOf(20.25, (day) => rise(day) - (day >= 20 ? 1.5 : 0));
    expect(cold.levelNow!).toBeCloseTo(whole.levelNow!, 1);
    expect(Math.abs(cold.at! - whole.at!)).toBeLessThan(0.5 * 86_400_000);
  });

  it('takes the valve as the early witness while the air still holds', () => {
    const busy = (day: number): number => 0.5 + Math.max(0, Math.min(0.45, 0.06 * (day - 8)));
    const [own] = seen([{ ...quiet('M01'), duty: busy }, quiet('M02'), quiet('M03')]);
    expect(own!.map(({ shape }) => shape)).toEqual(['duty']);
    expect(own![0]!.features.dutyNow).toBeGreaterThan(0.9);
  });

  it('says when days are too few', () => {
    const signals = computeSignals(handMadeStore({ days: 5, circuits: [quiet('M01')] }));
    const { evidence, abstentions } = analyse(signals.circuits[0]!, signals.groups[0]!, signals);
    expect(evidence).toEqual([]);
    expect(abstentions[0]!.needs).toBe('7 days of history');
  });
});
