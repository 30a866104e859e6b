import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { codesOf, normalized, onlyReport, readContent } from './support.ts';

/** Excerpts of public logs and their sources: data/SOURCES.md. */
const excerpt = (name: string): Uint8Array => readFileSync(join(import.meta.dirname, 'data', name));
const lines = (name: string): string[] => excerpt(name).toString().trimEnd().split(/\r?\n/u);

describe('public logs', () => {
  it('with stamps in single quotes', async () => {
    const readings = await readContent(excerpt('intel-mote33.csv'), { zone: 'UTC' });
    expect(readings.columns.map(({ point }) => point)).toEqual([
      'mote_id',
      'has_fault_type',
      'temperature',
      'light',
    ]);
    expect(normalized(readings)).toContain('2004-02-29T00:00:30Z,temperature,19.1456,\n');
    expect(onlyReport(readings)).toMatchObject({ rows: 40, rowsRejected: 0, values: 160, valuesRejected: 0 });
  });

  it('with two-digit years first, and one quantity in °C and °F', async () => {
    const readings = await readContent(excerpt('arduino-station.csv'), { zone: 'UTC' });
    expect(normalized(readings)).toContain(
      '2021-08-16T19:58:30Z,tempC,26.5,Cel\n2021-08-16T19:58:30Z,tempF,79.7,[degF]\n',
    );
    expect(onlyReport(readings).choices.map(({ chosen }) => chosen)).toContain('year first (year-month-day)');
    expect(codesOf(readings)).toEqual(expect.arrayContaining(['missing-word']));
  });

  it('with offsets without a colon, at irregular times', async () => {
    const readings = await readContent(excerpt('ruuvi-fridge.csv'), { zone: 'America/Denver' });
    expect(readings.report.timeZoneSource).toBe('offsets-in-export');
    expect(normalized(readings).split('\n')[1]).toBe('2020-05-05T07:21:56Z,temperature,1.73,');
    expect(onlyReport(readings).valuesRejected).toBe(0);
  });

  it('without a header, day first, with semicolons and repeated stamps', async () => {
    const readings = await readContent(excerpt('tracebase-raw.csv'), {
      zone: 'Europe/Berlin',
      overrides: { dateOrder: 'dmy' },
    });
    expect(readings.columns.map(({ point }) => point)).toEqual(['column 2', 'column 3']);
    expect(normalized(readings).split('\n')[1]).toBe('2012-01-31T23:00:00Z,column 2,0,');
    expect(codesOf(readings)).toContain('header-missing');
  });

  it('with numbers of ten digits, to the last one', async () => {
    const readings = await readContent(excerpt('nab-ambient.csv'), { zone: 'UTC' });
    const written = lines('nab-ambient.csv')
      .slice(1)
      .map((line) => Number(line.split(',')[1]));
    expect([...readings.columns[0]!.values]).toEqual(written);
  });

  it('with 185 columns, one without a name, idle channels at -98509.069', async () => {
    const header = lines('co2-rig-header.csv')[0]!;
    const width = header.split(',').length;
    expect(width).toBe(185);
    const rows = Array.from({ length: 40 }, (_, row) =>
      [
        `09/15/2019 10:${10 + row}:00`,
        ...Array.from({ length: width - 1 }, (_, at) =>
          at % 60 === 7 ? '-98509.069' : (20 + at + Math.sin(row + at)).toFixed(3),
        ),
      ].join(','),
    );
    const readings = await readContent([header, ...rows].join('\r\n'), { zone: 'UTC' });
    expect(readings.columns).toHaveLength(184);
    const unnamed = header.split(',').indexOf('');
    expect(readings.columns.map(({ point }) => point)).toContain(`column ${unnamed + 1}`);
    const idle = readings.columns.filter(({ values }) => values.every((value) => Number.isNaN(value)));
    expect(idle).toHaveLength(3);
    expect(codesOf(readings)).toEqual(expect.arrayContaining(['name-empty', 'not-connected']));
  });
});
