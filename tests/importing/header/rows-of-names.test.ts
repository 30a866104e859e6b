import { describe, expect, it } from 'vitest';
import { header, plainRows, written } from '../damaged/plain-log.ts';
import { codesOf, normalized, normalizedContent, onlyReport, readContent } from '../support.ts';

const bare = header.map((name) => name.replace(/ \(.*/u, ''));
const units = header.map((name) => /\((.*)\)/u.exec(name)?.[1] ?? '');
const numbers = header.map((_, at) => `CH${at + 1}`);
const under = (...rows: readonly string[]) => ({
  changeLines: ([head, ...rest]: string[]) => [head!, ...rows, ...rest],
});
const over = (...rows: readonly string[]) => ({ changeLines: (lines: string[]) => [...rows, ...lines] });
const split = (...rows: readonly string[]) => ({
  changeLines: ([, ...rest]: string[]) => [...rows, ...rest],
});

async function isPlain(content: string): Promise<ReturnType<typeof onlyReport>> {
  const readings = await readContent(content);
  expect(normalized(readings) === (await normalizedContent(written()))).toBe(true);
  return onlyReport(readings);
}

describe('of two rows of names, the one that names the points counts, and the report says so', () => {
  it.each([
    { name: 'numbers of channels above', writing: over(`Channel,${numbers.join(',')}`) },
    { name: 'numbers of channels below', writing: under(`,${numbers.join(',')}`) },
    {
      name: 'descriptions below',
      writing: under('Time stamp,left end,right end,target,defrost relay,valve,pressure of the rack,level'),
    },
    {
      name: 'numbers above that a list explains',
      writing: {
        headers: numbers,
        before: ['Logger,TL', ...header.map((name, at) => `CH${at + 1},${name}`), ''],
      },
    },
  ])('$name', async ({ writing }) => {
    const { choices } = await isPlain(written(writing));
    expect(choices.map(({ about }) => about)).toContain('names of the columns');
  });

  it('with the units of the list', async () => {
    const before = ['Channel,Name,Unit', ...bare.map((name, at) => `CH${at + 1},${name},${units[at]}`), ''];
    const { columns } = await readContent(written({ headers: numbers, before }));
    expect(columns.map(({ point }) => point)).toEqual(bare);
    expect(columns.map(({ unit }) => unit)).toEqual(['degF', 'degF', 'degF', null, null, 'psig', 'percent']);
  });
});

describe('rows over the header that name no columns leave the names alone', () => {
  it.each([
    'Start time,2026-09-03 00:00,End time,2026-09-06 00:00',
    'Time zone,America/Denver,Interval,300 s',
    'Date range:,all,Store:,12',
  ])('%s', async (remark) => {
    const rows = plainRows().map(
      ({ wallMs, cells }) => `${new Date(wallMs).toISOString()},${cells.slice(0, 3).join(',')}`,
    );
    const { columns } = await readContent([remark, 'Time,A (°F),B (°F),C (°F)', ...rows].join('\n'));
    expect(columns.map(({ point }) => point)).toEqual(['A (°F)', 'B (°F)', 'C (°F)']);
  });
});

describe('two rows of names that come again on every page', () => {
  const description = 'Time stamp,left end,right end,target,defrost relay,valve,pressure of the rack,level';

  it.each([
    { name: 'with descriptions', page: (head: string) => [head, description] },
    { name: 'with numbers of channels', page: (head: string) => [`Channel,${numbers.join(',')}`, head] },
  ])('begin no other table: $name', async ({ page }) => {
    const changeLines = ([head, ...rest]: string[]): string[] => [
      ...page(head!),
      ...rest.slice(0, 300),
      ...page(head!),
      ...rest.slice(300),
    ];
    await isPlain(written({ changeLines }));
    expect(codesOf(await readContent(written({ changeLines })))).not.toContain('second-table');
  });
});

describe('names that stand in two rows are put together', () => {
  const lower = ',air A (°F),air B (°F),set (°F),dfr,liquid,suction (psig),';

  it.each(['Time,M01,M01,M01,M01,M01,S1,Receiver (%)', 'Time,M01,,,,,S1,Receiver (%)'])(
    '%s',
    async (upper) => {
      await isPlain(written(split(upper, lower)));
    },
  );

  it('with a units row over them or under them left to the units', async () => {
    for (const writing of [over(`,${units.join(',')}`), under(`,${units.join(',')}`)]) {
      const { columns } = await readContent(written({ headers: bare, ...writing }));
      expect(columns.map(({ point }) => point)).toEqual(bare);
      expect(columns[5]!.unit).toBe('psig');
    }
  });

  it.each([
    { way: 'at a fixed width', cut: (head: string) => [head.slice(0, 72), head.slice(72)] },
    {
      way: 'at a blank',
      cut: (head: string) => [
        head.slice(0, head.lastIndexOf(' ', 70)),
        head.slice(head.lastIndexOf(' ', 70) + 1),
      ],
    },
    { way: 'twice', cut: (head: string) => head.match(/.{1,40}/gu)! },
  ])('though a mail cut the header $way', async ({ cut }) => {
    const { choices } = await isPlain(
      written({ changeLines: ([head, ...rest]) => [...cut(head!), ...rest] }),
    );
    expect(choices.map(({ because }) => because)).toContainEqual(expect.stringContaining('cut into lines'));
  });
});

describe('a header inside the table', () => {
  const again = (change: (head: string) => string) => ({
    changeLines: ([head, ...rest]: string[]) => [
      head!,
      ...rest.slice(0, 300),
      change(head!),
      ...rest.slice(300),
    ],
  });

  it('may be written in capitals', async () => {
    await isPlain(written(again((head) => head.toUpperCase())));
  });

  it('with a name changed begins another table, and no reading gets the old name', async () => {
    const readings = await readContent(written(again((head) => head.replace('Receiver', 'Level'))));
    expect(codesOf(readings)).toContain('second-table');
    const { columns } = readings;
    expect(columns.map(({ point }) => point)).toEqual([...header, 'Level (%)']);
    expect(columns[6]!.values.filter((value) => !Number.isNaN(value))).toHaveLength(300);
    expect(columns[0]!.values).toHaveLength(864);
  });

  it('with a column more gives every reading', async () => {
    const longer = written(
      { headers: [...header, 'New (A)'], cell: (value) => String(value ?? '') },
      plainRows(),
    )
      .split('\n')
      .slice(301)
      .map((line) => (line === '' ? '' : `${line},5`));
    const head = `Time,${header.join(',')},New (A)`;
    const content = [...written().split('\n').slice(0, 301), head, ...longer].join('\n');
    const readings = await readContent(content);
    expect(onlyReport(readings)).toMatchObject({ rowsRejected: 0, valuesRejected: 0 });
    expect(readings.columns.at(-1)).toMatchObject({ point: 'New (A)', unit: 'A' });
  });
});

describe('units that contradict each other are told', () => {
  const told = expect.objectContaining({ about: 'unit of “M01 air A (°F)”', chosen: 'degC' });

  it('in a units row', async () => {
    const readings = await readContent(written(under(',°C,°C,°C,,,psig,%')));
    expect(onlyReport(readings).choices).toContainEqual(told);
  });

  it('in the cells', async () => {
    const cell = (value: number | string | null, _: number, at: number): string =>
      at === 0 ? `${value} °C` : String(value ?? '');
    expect(onlyReport(await readContent(written({ cell }))).choices).toContainEqual(told);
  });

  it('in the unit column of a long table', async () => {
    const rows = plainRows().map(
      ({ wallMs, cells }) => `${new Date(wallMs).toISOString()},${header[0]},${cells[0]},°C`,
    );
    const readings = await readContent(['time,point,value,unit', ...rows].join('\n'));
    expect(onlyReport(readings).choices).toContainEqual(told);
  });
});
