import Papa from 'papaparse';
import { beforeAll, describe, expect, test } from 'vitest';
import { tableNamed } from '../../src/audit/month-audit.ts';
import type { Table } from '../../src/audit/table.ts';
import { tableCsv } from '../../src/audit/table-csv.ts';
import { tableDefinitions } from '../../src/audit/tables/registry.ts';
import { quantile } from '../../src/maths/quantile.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { Phase } from '../../src/signals/types.ts';
import { exportTemperatureFrom } from '../../src/units/convert.ts';
import { circuitOf, gridOf, handMadeLog, recordOf, valuesOf } from '../support/hand-made-log.ts';
import { auditOf, objectsOf, type SimulatedAudit, simulatedAudit } from './support.ts';

/** First columns as the contract (§3) fixes them. */
const contract: { readonly [table: string]: string } = {
  probes: 'day,circuit,probe,median,p10,p90,aboveLimitMinutes,coverage',
  circuits:
    'circuit,setPoint,median,spread,duty,valveStartsPerHour,defrosts,defrostsMissed,recoveryMedianMinutes,aboveLimitMinutes,coverage',
  defrosts: 'circuit,start,end,source,probe,peak,recoveryMinutes,recovered',
  compressors: 'day,suctionGroup,point,starts,runHours,shortestRunMinutes,shortestOffMinutes,coverage',
};

const csvOf = (table: Table): string => [...tableCsv(table)].join('');

let made: SimulatedAudit;
beforeAll(async () => {
  made = await simulatedAudit('iced-end', { days: 12 }, { logging: { intervalMinutes: 5 } });
});

describe('the tables of the contract', () => {
  test.each(Object.entries(contract))('%s.csv begins with its columns', (name, columns) => {
    const csv = csvOf(tableNamed(made.audit, name));
    expect(csv.split('\n')[0]!.startsWith(columns)).toBe(true);
    const { data, errors } = Papa.parse<Record<string, string>>(csv.trim(), { header: true });
    expect(errors).toEqual([]);
    expect(data.length).toBeGreaterThan(0);
  });

  test('say of every column what it is and how it is computed', () => {
    for (const { columns } of tableDefinitions) {
      for (const column of columns) expect(column.definition.length).toBeGreaterThan(4);
      expect(new Set(columns.map(({ name }) => name)).size).toBe(columns.length);
    }
  });

  test('are the same bytes for the same input', async () => {
    const again = await auditOf(made.log);
    for (const [name, table] of made.audit.tables) expect(csvOf(again.tables.get(name)!)).toBe(csvOf(table));
  });
});

test('a table of many parts is one CSV, each line once', () => {
  const rows = Array.from({ length: 1000 }, (_, i) => [i, i % 3 === 0 ? null : '=1+1']);
  const columns = ['row', 'text'].map((name) => ({ name, unit: '', definition: '', formula: '' }));
  const lines = csvOf({ name: 'long', title: '', columns, rows, eachRow: () => rows }).split('\n');
  expect(lines).toHaveLength(1002);
  expect([lines[0], lines[1], lines[2], lines[1000], lines[1001]]).toEqual([
    'row,text',
    '0,',
    `1,"'=1+1"`,
    '999,',
    '',
  ]);
});

test('median, p10 and p90 of probes.csv are type 7 quantiles (R) of the settled readings of the local day', () => {
  const signals = computeSignals(made.log);
  for (const row of objectsOf(tableNamed(made.audit, 'probes')).slice(0, 60)) {
    const own = signals.circuits.find(({ circuit }) => circuit.id === row['circuit'])!;
    const probe = own.circuit.probes.find(({ point }) => point === row['probe'])!;
    const day = made.log.calendar.days.find(({ date }) => date === row['day'])!;
    const settled = [...probe.record.values.subarray(day.from, day.to)]
      .filter((_, i) => own.phase[day.from + i] === Phase.cooling)
      .map((celsius) => exportTemperatureFrom(celsius, 'degF'));
    for (const [column, share] of [
      ['median', 0.5],
      ['p10', 0.1],
      ['p90', 0.9],
    ] as const)
      expect(row[column]).toBeCloseTo(quantile(settled, share), 2);
    expect(row['settledMinutes']).toBe(settled.length * 5);
  }
});

test('the days, grouped by danfojs, are the sums of the rows that they are made from', () => {
  const probes = objectsOf(tableNamed(made.audit, 'probes'));
  const compressors = objectsOf(tableNamed(made.audit, 'compressors'));
  for (const row of objectsOf(tableNamed(made.audit, 'days'))) {
    const sum = (rows: typeof probes, name: string) =>
      rows
        .filter(({ day }) => day === row['day'])
        .reduce((total, one) => total + (Number(one[name]) || 0), 0);
    expect(row['aboveLimitMinutes']).toBeCloseTo(sum(probes, 'aboveLimitMinutes'), 6);
    expect(row['compressorHours']).toBeCloseTo(sum(compressors, 'runHours'), 2);
  }
});

describe('by hand', () => {
  const grid = gridOf(2, 10);
  const fahrenheit = (value: number) => ((value - 32) * 5) / 9;
  /** 36 °F, for two hours of the second day 44 °F; nothing logged for the last six hours. */
  const air = recordOf(
    '=cmd|A1',
    'temperature',
    valuesOf(grid, (minute) =>
      minute >= 2520
        ? Number.NaN
        : fahrenheit(minute >= 2000 && minute < 2120 ? 44 : 36 + 0.1 * ((minute / 10) % 2)),
    ),
  );
  const circuit = circuitOf({
    probes: [air],
    setPoint: fahrenheit(36),
    limits: { high: fahrenheit(41), minutes: 60 },
  });
  const log = handMadeLog({ days: 2, stepMinutes: 10, circuits: [circuit] });

  test('two hours above the limit of the site, six hours of a day unknown', async () => {
    const [first, second] = objectsOf(tableNamed(await auditOf(log), 'probes'));
    expect(first).toMatchObject({ aboveLimitMinutes: 0, coverage: 1, limit: 41 });
    expect(second).toMatchObject({ aboveLimitMinutes: 120, coverage: 0.75 });
  });

  test('a name that a spreadsheet would run as a formula is defused', async () => {
    const csv = csvOf(tableNamed(await auditOf(log), 'probes'));
    expect(csv).toContain("'=cmd|A1");
    expect(csv).not.toMatch(/(^|,)"?=/m);
  });

  test('a table without rows is its header', async () => {
    const csv = csvOf(tableNamed(await auditOf(log), 'compressors'));
    expect(csv.split('\n')).toHaveLength(2);
  });
});
