import { numbersFrom, stampOf, writeLines } from './write-lines.ts';

const points = 120;

/** Writes a long export (time, point, value) of `rows` readings of 120 points. */
export async function writeLongExport(file: string, rows: number): Promise<void> {
  const random = numbersFrom(54_321);
  await writeLines(file, 'time,point,value', rows, (row) => {
    const point = row % points;
    const name = `C${String(1 + Math.floor(point / 5)).padStart(2, '0')} probe ${1 + (point % 5)}`;
    return `${stampOf(Math.floor(row / points))},${name},${(40 * random() - 20).toFixed(2)}`;
  });
}
