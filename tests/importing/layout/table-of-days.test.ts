import { expect, test } from 'vitest';
import { readContent } from '../support.ts';

const clocks = Array.from({ length: 24 }, (_, hour) => `${String(hour).padStart(2, '0')}:00`);
const days = ['2026-08-15', '2026-08-16', '2026-08-17'];
const rowOf = (level: number) => clocks.map((_, hour) => (level + (hour % 5) / 10).toFixed(1));
const table = (header: readonly string[], lead: (day: string, point: string) => readonly string[]) =>
  [
    [...header, ...clocks].join(','),
    ...['Dairy air 1', 'Dairy air 2', 'Frozen air'].flatMap((point, index) =>
      days.map((day) => [...lead(day, point), ...rowOf(36 - 20 * index)].join(',')),
    ),
  ].join('\n');

const found = async (text: string) => {
  const { columns } = await readContent(text);
  return columns.map(({ point, values }) => [point, values.length, values[0], values.at(-1)]);
};
const expected = [
  ['Dairy air 1', 72, 36, 36.3],
  ['Dairy air 2', 72, 16, 16.3],
  ['Frozen air', 72, -4, -3.7],
];

test('days of several points: the name stands beside the date', async () => {
  expect(await found(table(['Date', 'Point'], (day, point) => [day, point]))).toEqual(expected);
  expect(await found(table(['Point', 'Date'], (day, point) => [point, day]))).toEqual(expected);
});

test('an owner and a point beside the date are one name', async () => {
  const text = table(['Circuit', 'Date', 'Point'], (day, point) => {
    const [owner, ...rest] = point.split(' ');
    return [owner!, day, rest.join(' ')];
  });
  expect(await found(text)).toEqual(expected);
});
