import { readFileSync } from 'node:fs';

const folder = new URL('.', import.meta.url);

/** One golden file as parsed JSON. */
// biome-ignore lint/suspicious/noExplicitAny: golden files hold whatever the reference program wrote.
export function golden(name: string): any {
  return JSON.parse(readFileSync(new URL(name, folder), 'utf8'));
}

/** Rows of a small golden CSV without quotes; the first row names the columns. */
export function goldenRows(name: string): { [column: string]: string }[] {
  const [header, ...lines] = readFileSync(new URL(name, folder), 'utf8').trim().split(/\r?\n/);
  const columns = header!.split(',');
  return lines.map((line) => {
    const cells = line.split(',');
    return Object.fromEntries(columns.map((column, i) => [column, cells[i] ?? '']));
  });
}

/** |difference| as a share of the reference (or absolute, for references below 1). */
export function distance(value: number, reference: number): number {
  return Math.abs(value - reference) / Math.max(1, Math.abs(reference));
}
