import { realpath, writeFile } from 'node:fs/promises';
import { ImportRefusal } from '../importing/readings.ts';

const realPath = (path: string): Promise<string | null> => realpath(path).catch(() => null);

/** Writes a file that the user named, but never over one of the inputs. */
export async function writeOutput(
  path: string,
  text: string | Iterable<string>,
  inputs: readonly (string | undefined)[],
  flag: 'w' | 'wx' = 'w',
): Promise<void> {
  const target = await realPath(path);
  for (const input of inputs) {
    if (target === null || input === undefined || (await realPath(input)) !== target) continue;
    throw new ImportRefusal(
      'output-is-input',
      `${path} is one of the files to read and would be lost; give the output another name.`,
    );
  }
  await writeFile(path, text, { flag });
}
