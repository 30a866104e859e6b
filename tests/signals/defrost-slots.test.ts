import { describe, expect, test } from 'vitest';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { defrostSlots } from '../../src/signals/defrost-slots.ts';
import { type CircuitSignals, type DefrostWindow, Phase } from '../../src/signals/types.ts';
import { gridOf, handMadeLog, type LogParts } from '../support/hand-made-log.ts';
import { dailyDefrosts, simpleCase } from '../support/simple-case.ts';

const days = 16;
const stepMinutes = 5;
const changeDay = 7;
const changes = changeDay * 1440 + 120;
const columns = {
  status: { valve: true, status: true, setPoint: true },
  air: { valve: true },
};

/** Off-cycle defrosts of 45 minutes at the minute of the day that the controller's clock shows. */
type Schedule = (minute: number) => boolean;
const at = (...starts: number[]): Schedule => dailyDefrosts(starts, 45);

function signalsOf(isDefrosting: Schedule, from: keyof typeof columns, clock: Partial<LogParts> = {}) {
  const circuit = simpleCase(gridOf(days, stepMinutes), { isDefrosting, columns: columns[from] });
  return computeSignals(handMadeLog({ days, stepMinutes, circuits: [circuit], ...clock })).circuits[0]!;
}

const missedIn = ({ slots }: CircuitSignals) =>
  slots.flatMap(({ missed }) => [...missed]).sort((a, b) => a - b);
const dueIn = ({ slots }: CircuitSignals) => slots.reduce((sum, { expected }) => sum + expected, 0);

const clocks = [
  ['autumn', { clockBackOnDay: changeDay }, 60],
  ['spring', { clockForwardOnDay: changeDay }, -60],
] as const;

describe.each(clocks)('where the clocks change in %s', (_, clock, later) => {
  const starts = [
    [180, 540, 900, 1260],
    [25, 385, 745, 1105, 1405],
    [120, 1410],
  ];
  describe.each([['status'], ['air']] as const)('defrosts known by the %s', (from) => {
    test.each(starts.map((one) => [one] as const))('at %j on a clock that stands still miss none', (day) => {
      const signals = signalsOf(at(...day), from, clock);
      expect(missedIn(signals)).toEqual([]);
      // Neither set of times is due all through; what touches an end of the record is not watched.
      expect(dueIn(signals) / (days * day.length)).toBeGreaterThan(0.85);
      expect(dueIn(signals) / (days * day.length)).toBeLessThan(1.05);
    });

    test.each(starts.map((one) => [one] as const))('at %j on a clock that changes miss none', (day) => {
      const followed: Schedule = (minute) => at(...day)(minute < changes ? minute : minute - later);
      const signals = signalsOf(followed, from, clock);
      expect(missedIn(signals)).toEqual([]);
      expect(signals.slots).toHaveLength(day.length);
    });
  });

  test.each([
    ['stands still', 0],
    ['changes', later],
  ])('starts of the site file on a clock that %s are followed', (_, shift) => {
    const starts = [180, 540, 900, 1260];
    const kept: Schedule = (minute) => at(...starts)(minute < changes ? minute : minute - shift);
    const circuit = simpleCase(gridOf(days, stepMinutes), { isDefrosting: kept, columns: { valve: true } });
    const defrost = { ...circuit.defrost, starts, minutes: 45 };
    const log = handMadeLog({ days, stepMinutes, circuits: [{ ...circuit, defrost }], ...clock });
    const signals = computeSignals(log).circuits[0]!;
    expect(signals.defrostSource).toBe('schedule');
    expect(signals.defrosts.length).toBeGreaterThanOrEqual(days * starts.length - 2);
    expect(missedIn(signals)).toEqual([]);
  });

  test('defrosts that stop after it are missed at the times that were then in force, and at no others', () => {
    const stops = 12 * 1440;
    const signals = signalsOf((minute) => minute < stops && at(180, 540, 900, 1260)(minute), 'status', clock);
    const missed = missedIn(signals).map((sample) => sample * stepMinutes);
    expect(missed).toHaveLength(16);
    expect(missed.every((minute) => [180, 540, 900, 1260].includes(minute % 1440))).toBe(true);
  });
});

describe('a schedule that was edited', () => {
  const edited = (before: Schedule, after: Schedule, onDay: number): Schedule => {
    return (minute) => (minute < onDay * 1440 ? before(minute) : after(minute));
  };

  test.each([
    ['to other times', at(150, 510, 870, 1230), at(330, 690, 1050, 1410)],
    ['one of its times', at(150, 510, 870, 1230), at(150, 510, 960, 1230)],
    ['to one defrost more a day', at(150, 510, 870), at(60, 420, 780, 1140)],
    ['by one defrost added', at(150, 510, 870), at(150, 510, 870, 1230)],
    ['to fewer at other times', at(60, 300, 540, 780, 1020, 1260), at(180, 660, 1140)],
  ])('%s has missed none', (_, before, after) => {
    expect(missedIn(signalsOf(edited(before, after, 9), 'status'))).toEqual([]);
  });

  test('and then is not kept has missed only those of the new one', () => {
    const after: Schedule = (minute) => minute < 12 * 1440 && at(240, 600, 960, 1320)(minute);
    const missed = missedIn(signalsOf(edited(at(150, 510, 870, 1230), after, 6), 'status'));
    expect(missed.map((sample) => (sample * stepMinutes) % 1440).slice(0, 4)).toEqual([240, 600, 960, 1320]);
    expect(missed).toHaveLength(16);
  });

  test('by taking times out of it, with none in their place, has missed those', () => {
    const signals = signalsOf(edited(at(150, 510, 870, 1230), at(150, 870), 9), 'status');
    expect(missedIn(signals)).toHaveLength(14);
  });
});

describe('off-cycle defrosts that hardly lift air that is warm already', () => {
  /** On days 8 and 9 the air hardly warms while the case rests. */
  const quiet = (minute: number) => minute >= 8 * 1440 && minute < 10 * 1440;
  const isDefrosting = at(150, 510, 870, 1230);
  const load = (minute: number) => (quiet(minute) ? 0.0012 : 0.008);

  test('have come where the valve rested in them', () => {
    expect(missedIn(resting({ valve: true }))).toEqual([]);
  });

  test('cannot be told from missed ones where no valve is logged', () => {
    expect(missedIn(resting({})).length).toBeGreaterThan(0);
  });

  function resting(logged: { readonly valve?: boolean }) {
    const circuit = simpleCase(gridOf(days, stepMinutes), { isDefrosting, load, columns: logged });
    return computeSignals(handMadeLog({ days, stepMinutes, circuits: [circuit] })).circuits[0]!;
  }
});

describe('hot gas so short that every ten minutes hardly shows it, known by the air alone', () => {
  const hotGas = dailyDefrosts([100, 460, 820, 1180], 14);
  const missedWhere = (isHidden: (day: number) => boolean) => {
    const isDefrosting = (minute: number) =>
      hotGas(minute) && !(isHidden(Math.floor(minute / 1440)) && minute % 1440 >= 460 && minute % 1440 < 500);
    const load = (minute: number) => (isDefrosting(minute) ? 0.035 : 0.008);
    const options = { isDefrosting, load, cooling: () => 0.5, columns: {} };
    const circuit = simpleCase(gridOf(days, 10), options);
    return missedIn(computeSignals(handMadeLog({ days, stepMinutes: 10, circuits: [circuit] })).circuits[0]!);
  };

  test('has not missed the ones that a few days do not show', () => {
    expect(missedWhere((day) => day === 4 || day === 9 || day === 12)).toEqual([]);
  });

  test('has missed them once they are not seen for days on end', () => {
    expect(missedWhere((day) => day >= 11)).toHaveLength(5);
  });
});

describe('defrosts that only the air shows', () => {
  const longer = 24;
  const { grid, calendar } = handMadeLog({ days: longer, stepMinutes });
  const starts = [150, 510, 870, 1230];
  const samples = 45 / stepMinutes;

  /** Four a day that lift the air by 4 K, every `faintOf`th by 1 K; the second of the day is not there on some days. */
  const missedOn = (
    hidden: readonly number[],
    faintOf: number,
    source: DefrostWindow['source'] = 'shape',
  ) => {
    const air = new Float64Array(grid.count).fill(3);
    const all = Array.from({ length: longer * starts.length }, (_, k) => ({
      day: Math.floor(k / starts.length),
      slot: k % starts.length,
      from: (Math.floor(k / starts.length) * 1440 + starts[k % starts.length]!) / stepMinutes,
      lift: k % faintOf === 0 ? 1 : 4,
    }));
    const seen = all.filter(({ day, slot }) => slot !== 1 || !hidden.includes(day));
    for (const { from, lift } of seen) air.fill(3 + lift, from, from + samples);
    const windows = seen.map(
      ({ from }): DefrostWindow => ({ from, to: from + samples, source, complete: true, probes: [] }),
    );
    const plan = { kind: 'off-cycle', status: null, perDay: null, minutes: null, starts: null } as const;
    const phase = new Uint8Array(grid.count).fill(Phase.cooling);
    return defrostSlots(plan, windows, air, phase, grid, calendar, null).flatMap(({ missed }) => missed)
      .length;
  };
  const inRow = (count: number) => Array.from({ length: count }, (_, k) => 4 + k);

  test('and some of them hardly: one that came may not be seen, but not for seven days in a row', () => {
    expect(missedOn(inRow(6), 7)).toBe(0);
    expect(missedOn([2, 3, 4, 6, 7, 8, 9, 10, 11], 7)).toBe(0);
    expect(missedOn(inRow(7), 7)).toBe(7);
    expect(missedOn(inRow(9), 7)).toBe(9);
  });

  test('and all of them plainly: each that is not there was missed', () => {
    expect(missedOn(inRow(6), 1000)).toBe(6);
    expect(missedOn([4], 1000)).toBe(1);
  });

  test('are another matter than those of a status, which is not faint', () => {
    expect(missedOn(inRow(6), 7, 'status')).toBe(6);
  });
});

test('shapes that the air of a case short of cooling makes between its planned defrosts are none that are missed', () => {
  const circuit = simpleCase(gridOf(days, 1), {
    isDefrosting: at(180, 540, 900, 1260),
    columns: columns.air,
    // Warmed at one time of some days by as much as a defrost does, with the valve shut for it.
    isOff: (minute) =>
      [7, 8, 9, 12].includes(Math.floor(minute / 1440)) && minute % 1440 >= 360 && minute % 1440 < 400,
  });
  const slotsBy = (perDay: number | null) => {
    const defrost = { ...circuit.defrost, kind: null, perDay, minutes: 45 };
    const log = handMadeLog({ days, stepMinutes: 1, circuits: [{ ...circuit, defrost }] });
    return computeSignals(log).circuits[0]!;
  };
  const unplanned = slotsBy(null);
  expect(unplanned.defrostSource).toBe('shape');
  expect(missedIn(unplanned).length).toBeGreaterThan(0);
  expect(missedIn(slotsBy(4))).toEqual([]);
});
