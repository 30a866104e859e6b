import { closeSync, openSync, realpathSync, writeFileSync } from 'node:fs';
import { ImportRefusal } from '../importing/readings.ts';

function realPath(path: string): string | null {
  try {
    return realpathSync(path);
  } catch {
    return null;
  }
}

/**
 * Writes a file that the user named, but never over one of the inputs. Throws what the file system says. At once, not
 * in turns: nothing else waits, and a month has a dozen tables.
 */
export function writeOutput(
  path: string,
  text: string | Iterable<string>,
  inputs: readonly (string | undefined)[],
  flag: 'w' | 'wx' = 'w',
): void {
  const target = realPath(path);
  for (const input of inputs) {
    if (target === null || input === undefined || realPath(input) !== target) continue;
    throw new ImportRefusal(
      'output-is-input',
      `${path} is one of the files to read and would be lost; give the output another name.`,
    );
  }
  const file = openSync(path, flag);
  try {
    for (const part of typeof text === 'string' ? [text] : text) writeFileSync(file, part);
  } finally {
    closeSync(file);
  }
}
