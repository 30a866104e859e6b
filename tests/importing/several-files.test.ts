import { describe, expect, it } from 'vitest';
import { plainRows, written } from './damaged/plain-log.ts';
import { memorySource, normalized, readContent, readSources } from './support.ts';

const rows = plainRows();
const whole = written();

describe('several files of one site', () => {
  it('joins files that follow each other', async () => {
    const found = await readSources([
      memorySource('week-1.csv', written({}, rows.slice(0, 400))),
      memorySource('week-2.csv', written({}, rows.slice(400))),
    ]);
    expect(normalized(found)).toBe(normalized(await readContent(whole)));
    expect(found.report.files.map((file) => file.rowsRejected)).toEqual([0, 0]);
  });

  it('drops what overlaps and counts it', async () => {
    const found = await readSources([
      memorySource('week-1.csv', written({}, rows.slice(0, 500))),
      memorySource('week-2.csv', written({}, rows.slice(400))),
    ]);
    expect(normalized(found)).toBe(normalized(await readContent(whole)));
    const [first, second] = found.report.files;
    expect(first!.rowsRejected).toBe(0);
    expect(second!.rowsRejected).toBe(100);
    expect(second!.issues.map((issue) => issue.code)).toContain('row-repeated');
  });

  it('reads the same file twice as once', async () => {
    const found = await readSources([memorySource('a.csv', whole), memorySource('copy/a.csv', whole)]);
    expect(normalized(found)).toBe(normalized(await readContent(whole)));
    expect(found.report.files[1]!.rowsRejected).toBe(rows.length);
    expect(found.report.files[1]!.valuesRejected).toBe(found.report.files[1]!.values);
  });

  it('keeps the later of two readings that differ and counts them', async () => {
    const corrected = written({
      cell: (value, row, column) => (row === 9 && column === 2 ? '37' : String(value ?? '')),
    });
    const found = await readSources([memorySource('a.csv', whole), memorySource('b.csv', corrected)]);
    expect(normalized(found)).toBe(normalized(await readContent(corrected)));
    expect(found.report.issues.map((issue) => issue.code)).toContain('files-conflict');
  });

  it('tells one file a circuit apart by the name of the file', async () => {
    const circuit = (name: string, warmer: number) =>
      memorySource(
        `${name}.csv`,
        `Time,Air\n${rows.map(({ wallMs, cells }) => `${new Date(wallMs).toISOString().slice(0, 19)},${Number(cells[0]) + warmer}`).join('\n')}\n`,
      );
    const found = await readSources([circuit('M01', 0), circuit('M02', 1.3)]);
    expect(found.columns.map((column) => column.point)).toEqual(['M01:Air', 'M02:Air']);
  });

  /** One file a point, each with a `Value`: seconds of the day in which it is on, or a number that stands still. */
  const onePoint = (name: string, value: (minute: number) => number): ReturnType<typeof memorySource> =>
    memorySource(
      `${name}.csv`,
      `Time,Value\n${rows
        .map(({ wallMs }, index) => `${new Date(wallMs).toISOString().slice(0, 19)},${value(index * 5)}`)
        .join('\n')}\n`,
    );
  const onFrom = (start: number) => (minute: number) =>
    minute % 1440 >= start && minute % 1440 < start + 40 ? 1 : 0;

  it('keeps apart two defrosts that agree only in being off', async () => {
    const found = await readSources([
      onePoint('M01 defrost', onFrom(120)),
      onePoint('M02 defrost', onFrom(300)),
    ]);
    expect(found.columns.map((column) => column.point)).toEqual(['M01 defrost:Value', 'M02 defrost:Value']);
    expect(found.report.issues.map(({ code }) => code)).not.toContain('files-joined');
  });

  it('keeps apart two set points that stand at the same number', async () => {
    const found = await readSources([onePoint('M01 set', () => 36), onePoint('M02 set', () => 36)]);
    expect(found.columns.map((column) => column.point)).toEqual(['M01 set:Value', 'M02 set:Value']);
  });

  it('keeps apart lights that one schedule switches', async () => {
    const day = (minute: number): number => (minute % 1440 >= 360 && minute % 1440 < 1320 ? 1 : 0);
    const found = await readSources([onePoint('M01 lights', day), onePoint('M02 lights', day)]);
    expect(found.columns.map((column) => column.point)).toEqual(['M01 lights:Value', 'M02 lights:Value']);
  });

  it('goes on without a file that is none, and says so', async () => {
    const found = await readSources([
      memorySource('a.csv', whole),
      memorySource('read me.txt', 'Exports of rack A\n'),
    ]);
    expect(normalized(found)).toBe(normalized(await readContent(whole)));
    expect(found.report.files[1]!.issues[0]!.code).toBe('file-without-readings');
  });

  it('brings a file in °C to the °F of the file before, and says so', async () => {
    const inUnit = (unit: string, from: number, to: number, celsius: boolean): string =>
      `Time,Air\n,${unit}\n${rows
        .slice(from, to)
        .map(({ wallMs, cells }) => {
          const value = celsius ? Math.round(((Number(cells[0]) - 32) / 1.8) * 1e8) / 1e8 : Number(cells[0]);
          return `${new Date(wallMs).toISOString().slice(0, 19)},${value}`;
        })
        .join('\n')}\n`;
    const found = await readSources([
      memorySource('week-1.csv', inUnit('°F', 0, 400, false)),
      memorySource('week-2.csv', inUnit('°C', 400, 864, true)),
    ]);
    expect(normalized(found)).toBe(normalized(await readContent(inUnit('°F', 0, 864, false))));
    expect(found.report.issues.map(({ code }) => code)).toContain('unit-changed');
    const below = inUnit('°F', 0, 400, false) + inUnit('°C', 400, 864, true);
    expect(normalized(await readContent(below))).toBe(normalized(found));
  });

  it.each([1, -6, 5.5])('tells that one file repeats the other %s h later', async (hours) => {
    const moved = rows.map((row) => ({ ...row, wallMs: row.wallMs + hours * 3_600_000 }));
    const found = await readSources([
      memorySource('store.csv', whole),
      memorySource('store-utc.csv', written({}, moved)),
    ]);
    const issue = found.report.issues.find(({ code }) => code === 'files-shifted')!;
    expect(issue.message).toContain(
      `${hours < 0 ? '' : '+'}${Number.isInteger(hours) ? hours : hours.toFixed(2)} h`,
    );
    expect(found.columns).toHaveLength(14);
  });

  it('does not take two circuits with the same headers for one log twice', async () => {
    const other = written({
      cell: (value, row) =>
        typeof value === 'number' ? String(value + (row % 7) / 10) : String(value ?? ''),
    });
    const found = await readSources([memorySource('m01.csv', whole), memorySource('m02.csv', other)]);
    expect(found.report.issues.map(({ code }) => code)).not.toContain('files-shifted');
    expect(found.columns).toHaveLength(14);
  });
});
