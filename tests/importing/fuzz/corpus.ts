import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { dialects, encodings, headers, layouts, times, values } from '../damaged/same-log.ts';
import { cells, rows } from '../damaged/told.ts';
import { bytesOf } from '../support.ts';

/** Bytes as text of one character a byte, so that damage can be done with string methods. */
export type Binary = string;

export function binaryOf(content: string | Uint8Array): Binary {
  return Buffer.from(bytesOf(content)).toString('latin1');
}

export function bytesOfBinary(text: Binary): Uint8Array {
  return Uint8Array.from(Buffer.from(text, 'latin1'));
}

const mostBytes = 6000;
const folder = join(import.meta.dirname, 'corpus');
const read = (path: string): Uint8Array => readFileSync(path);
const listIn = (name: string): string[] => JSON.parse(read(join(folder, name)).toString()) as string[];
const filesOf = (path: string): Binary[] =>
  readdirSync(path)
    .filter((name) => name.endsWith('.csv'))
    .sort()
    .map((name) => binaryOf(read(join(path, name))));

/** What public CSV readers are tested with (corpus/SOURCES.md). */
export const publicFiles: readonly Binary[] = [
  ...['csv-spectrum', 'papaparse', 'duckdb', 'frictionless', 'pvlib'].flatMap((name) =>
    filesOf(join(folder, name)),
  ),
  ...listIn('papaparse/inputs.json').map(binaryOf),
  ...listIn('fastcsv/inputs.json').map(binaryOf),
];

/** Logs: excerpts of real ones (../data/SOURCES.md) and the plain log in every dialect and state of damage. */
export const logs: readonly Binary[] = [
  ...filesOf(join(import.meta.dirname, '../data')),
  ...[...encodings, ...dialects, ...headers, ...times, ...layouts, ...values, ...rows, ...cells].map(
    ({ content }) => binaryOf(content()).slice(0, mostBytes),
  ),
];

export const naughtyStrings: readonly Binary[] = listIn('naughty-strings.json').map(binaryOf);
