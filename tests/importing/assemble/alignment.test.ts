import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assembleLog } from '../../../src/importing/assemble.ts';
import { timeAt } from '../../../src/model/grid.ts';
import type { Record } from '../../../src/model/record.ts';
import { type ColumnSpec, minuteMs, readingsOf } from './readings-of.ts';

const start = Date.UTC(2026, 8, 1, 6);
const site = { circuits: [{ id: 'M01', probes: ['air'], valve: 'valve' }] };

function assembled(specs: readonly ColumnSpec[], stepMs = minuteMs) {
  const log = assembleLog(readingsOf(specs, { start, stepMs }), site).log;
  return { log, air: log.circuits[0]!.probes[0]!.record, valve: log.circuits[0]!.valve };
}

describe('sampled columns', () => {
  test('rows on the grid become the record without a copy', () => {
    const readings = readingsOf([{ point: 'air', values: [1, 2, 3, 4, 5], unit: 'degC' }], { start });
    const { log } = assembleLog(readings, site);
    expect(log.circuits[0]!.probes[0]!.record.values.buffer).toBe(readings.columns[0]!.values.buffer);
    expect(log.grid).toEqual({ startMs: start, stepMs: minuteMs, count: 5 });
  });

  test('one missed reading is bridged, a longer gap stays a gap', () => {
    const { air } = assembled([
      {
        point: 'air',
        unit: 'degC',
        values: [0, 1, Number.NaN, 3, Number.NaN, Number.NaN, Number.NaN, 7, 8, 9, 9, 9],
      },
    ]);
    expect([...air.values]).toEqual([0, 1, 1, 3, 3, Number.NaN, Number.NaN, 7, 8, 9, 9, 9]);
  });

  test('the same readings give the same record whether rows are missing or cells are empty', () => {
    fc.assert(
      fc.property(
        fc.array(fc.option(fc.integer({ min: -30, max: 60 }), { nil: Number.NaN, freq: 3 }), {
          minLength: 12,
          maxLength: 80,
        }),
        (cells) => {
          const values = [...Array<number>(90).fill(0), ...cells, 0, 0, 0];
          const times = values.map((_, index) => start + index * minuteMs);
          const kept = values.flatMap((value, index) => (Number.isNaN(value) ? [] : [index]));
          const wide = assembled([{ point: 'air', unit: 'degC', values }]).air;
          const sparse = assembled([
            {
              point: 'air',
              unit: 'degC',
              values: kept.map((index) => values[index]!),
              times: kept.map((index) => times[index]!),
            },
            { point: 'beat', values: values.map(() => 1), times },
          ]).air;
          expect([...sparse.values]).toEqual([...wide.values]);
        },
      ),
    );
  });

  test('every sample has the last reading at or before it that is younger than twice the interval (a naive twin)', () => {
    const gaps = fc.array(fc.integer({ min: 1, max: 7 }), { minLength: 30, maxLength: 60 });
    fc.assert(
      fc.property(gaps, (minutes) => {
        const times = [start];
        for (const gap of minutes) times.push(times.at(-1)! + gap * 20_000);
        const values = times.map((_, index) => index);
        const { air, log } = assembled([{ point: 'air', unit: 'degC', values, times }]);
        const hold = 2 * Math.max(air.intervalMs, log.grid.stepMs);
        for (let sample = 0; sample < log.grid.count; sample++) {
          const now = timeAt(log.grid, sample);
          const before = times.flatMap((time, index) => (time <= now && now - time < hold ? [index] : []));
          expect(air.values[sample]).toBe(before.at(-1) ?? Number.NaN);
        }
      }),
    );
  });

  test('rows that keep to half past the minute stay there', () => {
    const times = Array.from({ length: 20 }, (_, index) => start + 30_000 + index * minuteMs);
    const { log, air } = assembled([
      { point: 'air', unit: 'degC', values: times.map((_, index) => index), times },
    ]);
    expect(log.grid.startMs).toBe(start + 30_000);
    expect(air.values[7]).toBe(7);
  });

  test('the step is the finest usual interval, brought to one that divides the day', () => {
    const steps = ([seconds]: number[]) => {
      const times = Array.from({ length: 50 }, (_, index) => start + index * seconds! * 1000);
      return (
        assembled([{ point: 'air', unit: 'degC', values: times.map((_, index) => index % 7), times }]).log
          .grid.stepMs / 1000
      );
    };
    expect([[4], [16], [59], [61], [299], [900], [3600]].map(steps)).toEqual([
      10, 15, 60, 60, 300, 900, 3600,
    ]);
  });

  test('says in what steps and how often a column was logged', () => {
    const { air } = assembled(
      [{ point: 'air', unit: 'degF', values: [36, 36.5, 38, 35.5, 37, 36, 36.5] }],
      5 * minuteMs,
    );
    expect(air.resolution).toBeCloseTo(0.5 / 1.8, 9);
    expect(air.intervalMs).toBe(5 * minuteMs);
    expect([air.exportUnit, air.first, air.last]).toEqual(['[degF]', start, start + 30 * minuteMs]);
  });
});

describe('change-of-value columns', () => {
  const changes = (values: number[], seconds: number[], more: Partial<ColumnSpec> = {}): ColumnSpec => ({
    point: 'valve',
    values,
    times: seconds.map((second) => start + second * 1000),
    status: true,
    logging: 'change-of-value',
    ...more,
  });
  const beat: ColumnSpec = { point: 'air', unit: 'degC', values: Array.from({ length: 120 }, () => 2) };

  function valveOf(specs: readonly ColumnSpec[]): Record {
    return assembled(specs).valve!;
  }

  test('the state stays in force until the next change, and the changes keep their seconds', () => {
    const valve = valveOf([beat, changes([0, 1, 0], [0, 65, 3605])]);
    expect([...valve.values.slice(0, 4)]).toEqual([0, 0, 1, 1]);
    expect(valve.values[60]).toBe(1);
    expect(valve.values[119]).toBe(0);
    expect([...valve.changes!.times].map((time) => (time - start) / 1000)).toEqual([0, 65, 3605]);
  });

  test('a change before the export begins tells the state at its beginning', () => {
    const valve = valveOf([beat, changes([0, 1, 0], [-9000, -600, 300])]);
    expect(valve.values[0]).toBe(1);
    expect([...valve.changes!.values]).toEqual([1, 0]);
  });

  test('one slow sampled column does not coarsen a log of changes, nor does a state from long ago lengthen it', () => {
    const hours = Array.from({ length: 25 }, (_, index) => start + index * 3_600_000);
    const toggles = Array.from({ length: 200 }, (_, index) => index * 420);
    const { log } = assembled([
      { point: 'air', unit: 'degC', values: hours.map(() => 2), times: hours },
      changes(
        toggles.map((_, index) => index % 2),
        toggles,
      ),
      changes(
        toggles.map((_, index) => index % 2),
        toggles,
        { point: 'fan' },
      ),
      changes([1, 0], [-40 * 86_400, 7200], { point: 'light' }),
    ]);
    expect(log.grid).toEqual({ startMs: start, stepMs: minuteMs, count: 1441 });
    expect(log.unassigned.find(({ point }) => point === 'light')!.values[0]).toBe(1);
  });

  test('a stretch in which every point is silent is a gap; one quiet column is none', () => {
    const times = Array.from({ length: 240 }, (_, index) => index * 60).filter(
      (second) => second < 3600 || second > 10_800,
    );
    const air = { ...beat, values: times.map(() => 2), times: times.map((second) => start + second * 1000) };
    const valve = valveOf([air, changes([1], [0])]);
    expect(valve.values[59]).toBe(1);
    expect(valve.values[120]).toBeNaN();
    expect(valve.values[200]).toBe(1);
    const told = [...valve.changes!.times].map((time, index) => [
      (time - start) / 60_000,
      valve.changes!.values[index],
    ]);
    expect(told).toEqual([
      [0, 1],
      [61, Number.NaN],
      [181, 1],
    ]);
  });

  test('an empty cell beside others is no change; a row that is empty throughout ends what is known', () => {
    const times = [0, 600, 1200, 1800].map((second) => start + second * 1000);
    const shared = { times, status: true, logging: 'change-of-value' as const };
    const readings = readingsOf(
      [
        { point: 'air', unit: 'degC', values: Array.from({ length: 40 }, () => 2) },
        { point: 'valve', values: [1, Number.NaN, Number.NaN, 0], ...shared },
        { point: 'fan', values: [1, 0, Number.NaN, 1], ...shared },
      ],
      { start },
    );
    const [air, valve, fan] = readings.columns;
    const columns = [air!, valve!, { ...fan!, times: valve!.times }];
    const { log } = assembleLog({ ...readings, columns }, site);
    const values = log.circuits[0]!.valve!.values;
    expect([values[5], values[15], values[25], values[35]]).toEqual([1, 1, Number.NaN, 0]);
  });
});
