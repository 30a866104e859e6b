import fc from 'fast-check';
import { expect, test } from 'vitest';
import { assembleLog } from '../../../src/importing/assemble.ts';
import type { ReadingColumn, Readings } from '../../../src/importing/readings.ts';
import type { SiteFile } from '../../../src/importing/site-file/site-file.ts';
import type { Log } from '../../../src/model/log.ts';
import type { Record } from '../../../src/model/record.ts';
import { dialects } from '../naming/dialects.ts';
import { exported } from '../naming/invented-store.ts';
import { readingsIn } from '../naming/truth.ts';

const sentences = dialects.find(({ title }) => title.startsWith('sentences'))!;

/** A fresh copy each time: assembly takes its readings over. */
function fresh(readings: Readings): Readings {
  const times = new Map<Float64Array, Float64Array>();
  const copyOf = (array: Float64Array): Float64Array => {
    const copy = times.get(array) ?? array.slice();
    times.set(array, copy);
    return copy;
  };
  const columns = readings.columns.map((column) => ({
    ...column,
    times: copyOf(column.times),
    values: column.values.slice(),
  }));
  return { ...readings, columns };
}

function recordsOf(log: Log): Map<string, Record> {
  const records = [
    ...log.unassigned,
    ...log.circuits.flatMap((circuit) => [
      ...circuit.probes.map(({ record }) => record),
      ...circuit.returnAir,
      ...[circuit.valve, circuit.superheat, circuit.defrost.status, circuit.setPoint],
    ]),
    ...log.suctionGroups.flatMap((group) => [
      ...group.compressors,
      ...[group.pressure, group.pressureSetPoint, group.discharge, group.liquidLevel],
    ]),
  ].filter((record): record is Record => record !== null && typeof record === 'object');
  return new Map(records.map((record) => [record.point, record]));
}

function expectSame(actual: Log, expected: Log): void {
  expect(actual.grid).toEqual(expected.grid);
  expect(actual.calendar).toEqual(expected.calendar);
  const records = recordsOf(actual);
  expect([...records.keys()].sort()).toEqual([...recordsOf(expected).keys()].sort());
  for (const [point, record] of recordsOf(expected)) {
    const other = records.get(point)!;
    expect({ ...other, values: null }).toEqual({ ...record, values: null });
    let differing = 0;
    for (let index = 0; index < record.values.length; index++) {
      if (!Object.is(record.values[index], other.values[index])) differing++;
    }
    expect(`${point}: ${differing} samples differ`).toBe(`${point}: 0 samples differ`);
  }
}

const store = readingsIn(exported(sentences));
const whole = assembleLog(fresh(store), null);
const site: SiteFile = whole.guess!.site;

/** Fewer repeated rows, in a file of hardly more, tell nothing: two racks may log the same headers and agree in them. */
const fewestRows = 20;

test('an export cut at any rows into files gives the same log, repeated rows included', () => {
  const rows = store.columns[0]!.times.length;
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.integer({ min: 1, max: rows - fewestRows }), { minLength: 1, maxLength: 4 }),
      fc.oneof(fc.constant(0), fc.integer({ min: fewestRows, max: 50 })),
      (cuts, repeated) => {
        const edges = [0, ...cuts.sort((a, b) => a - b), rows];
        const columns = edges.slice(0, -1).flatMap((from, part) => {
          const to = Math.min(rows, edges[part + 1]! + repeated);
          const times = store.columns[0]!.times.slice(from, to);
          return store.columns.map(
            (column): ReadingColumn => ({
              ...column,
              fileStem: `part-${part + 1}`,
              order: column.order,
              times,
              values: column.values.slice(from, to),
            }),
          );
        });
        expectSame(assembleLog({ ...store, columns }, site).log, whole.log);
      },
    ),
    { numRuns: 12 },
  );
});

test('an export with its columns spread over files gives the same log', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 1, max: 4 }), {
        minLength: store.columns.length,
        maxLength: store.columns.length,
      }),
      (files) => {
        const spread = fresh(store).columns.map((column, index) => ({
          ...column,
          fileStem: `file-${files[index]}`,
        }));
        expectSame(assembleLog({ ...store, columns: spread }, site).log, whole.log);
      },
    ),
    { numRuns: 8 },
  );
});

test('columns in any order give the same circuits and records without a site file', () => {
  fc.assert(
    fc.property(
      fc.shuffledSubarray([...store.columns.keys()], { minLength: store.columns.length }),
      (order) => {
        const copy = fresh(store);
        const columns = order.map((index) => copy.columns[index]!);
        const shuffled = assembleLog({ ...store, columns }, null);
        expect(shuffled.guess!.site).toEqual(site);
        expectSame(shuffled.log, whole.log);
      },
    ),
    { numRuns: 8 },
  );
});

test('°F in equals °C in, to 1e-9', () => {
  const fahrenheit = fresh(store);
  const celsius = {
    ...store,
    columns: fresh(store).columns.map((column): ReadingColumn => {
      if (column.unit !== 'degF' && column.unit !== 'deltaF') return column;
      const zero = column.unit === 'degF' ? 32 : 0;
      return {
        ...column,
        unit: column.unit === 'degF' ? 'degC' : 'deltaC',
        values: column.values.map((value) => ((value - zero) * 5) / 9),
      };
    }),
  };
  const a = recordsOf(assembleLog(fahrenheit, site).log);
  const b = recordsOf(assembleLog(celsius, site).log);
  for (const [point, record] of a) {
    const other = b.get(point)!;
    expect(other.quantity).toBe(record.quantity);
    expect(
      Math.max(...record.values.map((value, index) => Math.abs(value - other.values[index]!))),
    ).toBeLessThan(1e-9);
  }
});

test('a shift of all times by whole days shifts the log and changes nothing else', () => {
  const week = 7 * 86_400_000;
  const later = fresh(store);
  const times = later.columns[0]!.times.map((time) => time + week);
  const shifted = assembleLog(
    { ...later, columns: later.columns.map((column) => ({ ...column, times })) },
    site,
  ).log;
  expect(shifted.grid).toEqual({ ...whole.log.grid, startMs: whole.log.grid.startMs + week });
  for (const [point, record] of recordsOf(shifted))
    expect(record.values).toEqual(recordsOf(whole.log).get(point)!.values);
});
