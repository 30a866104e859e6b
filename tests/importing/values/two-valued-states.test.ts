import { describe, expect, it } from 'vitest';
import { header, type PlainRow, plainCell, plainRows, written } from '../damaged/plain-log.ts';
import { codesOf, normalized, normalizedContent, onlyReport, readContent } from '../support.ts';

const rows = plainRows();
const writtenAs = (on: string, off: string) => ({
  cell: (value: PlainRow['cells'][number]): string =>
    value === 'ON' || value === 'OPEN' ? on : value === 'OFF' || value === 'CLOSED' ? off : plainCell(value),
});

describe('two numbers in a column of a state', () => {
  it.each([
    ['100', '0'],
    ['100 %', '0 %'],
    ['100%', '0%'],
    ['100.0', '0.0'],
    ['255', '0'],
    ['-1', '0'],
  ])('are its states, and the report says so: %s and %s', async (on, off) => {
    const readings = await readContent(written(writtenAs(on, off)));
    expect(normalized(readings) === (await normalizedContent(written()))).toBe(true);
    expect(onlyReport(readings).choices).toContainEqual(
      expect.objectContaining({ about: expect.stringContaining('0 in “M01 dfr”'), chosen: 'ON and OFF' }),
    );
  });

  it.each([
    { what: 'a share by its header', name: 'M01 valve (%)', on: '100', others: [] },
    { what: 'a name that says no state', name: 'M01 humidity', on: '100', others: [] },
    { what: 'a third value', name: 'M01 valve', on: '100', others: ['50'] },
    { what: 'another unit', name: 'M01 valve', on: '100 V', others: [] },
    { what: 'no other value', name: 'M01 valve', on: '0', others: [] },
  ])('are numbers with $what', async ({ name, on, others }) => {
    const cells = rows.map(({ cells: each }, at) => others[at] ?? (each[3] === 'ON' ? on : '0'));
    const cell = (_: unknown, row: number, column: number): string =>
      column === 3 ? cells[row]! : plainCell(rows[0]!.cells[column]!);
    const readings = await readContent(written({ headers: header.with(3, name), cell }));
    const column = readings.columns.find(({ point }) => point === name)!;
    expect(column.values).toContain(Number.parseInt(on, 10));
    expect(onlyReport(readings).choices.map(({ chosen }) => chosen)).not.toContain('ON and OFF');
  });
});

describe('words for states and faults', () => {
  it.each([
    ['Accesa', 'Spenta'],
    ['Aperta', 'Chiusa'],
    ['Abierta', 'Cerrada'],
    ['Geopend', 'Gesloten'],
    ['Till', 'Från'],
    ['Öppen', 'Stängd'],
    ['Åben', 'Lukket'],
    ['WŁ', 'WYŁ'],
    ['Zap', 'Vyp'],
    ['En service', 'Hors service'],
  ])('%s and %s', async (on, off) => {
    const text = await normalizedContent(written(writtenAs(on, off)));
    expect(text === (await normalizedContent(written()))).toBe(true);
  });

  it.each(['OL', 'OPN', 'Sht', 'N.C.', '>302', '< -58', '#WERT!'])('%s is a fault', async (word) => {
    const cell = (value: PlainRow['cells'][number], row: number, column: number): string =>
      column === 0 && row > 9 && row < 20 ? word : plainCell(value);
    const readings = await readContent(written({ cell }));
    expect(codesOf(readings)).toContain('fault-word');
    expect(onlyReport(readings).valuesRejected).toBe(10);
  });
});
