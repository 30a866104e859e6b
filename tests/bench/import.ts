import { execFile } from 'node:child_process';
import { createReadStream, existsSync } from 'node:fs';
import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';

const run = promisify(execFile);

export interface ImportRun {
  readonly seconds: number;
  /** Largest resident set of the process, in megabytes. */
  readonly megabytes: number;
}

export interface ImportBench {
  readonly name: string;
  readonly megabytesOfText: number;
  readonly rimelog: ImportRun;
  /** The same file read by pandas into the same form; null where it is not installed. */
  readonly pandas: ImportRun | null;
  /** Reading the bytes and finding the line ends, the floor of any reader. */
  readonly newlineScan: ImportRun;
}

/** A python3 that has pandas, as Debian's python3-pandas installs it; null where there is none. */
export async function pythonWithPandas(): Promise<string | null> {
  for (const python of ['/usr/bin/python3', 'python3']) {
    if (python.startsWith('/') && !existsSync(python)) continue;
    const found = await run(python, ['-c', 'import pandas']).then(
      () => true,
      () => false,
    );
    if (found) return python;
  }
  return null;
}

const pandasRead = `
import sys, time, resource, json
import pandas as pd
start = time.perf_counter()
frame = pd.read_csv(sys.argv[1])
column = frame.columns[0]
frame[column] = pd.to_datetime(frame[column], format='%Y-%m-%d %H:%M:%S')
print(json.dumps({'seconds': time.perf_counter() - start, 'megabytes': resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024}))
`;

/** The middle of several runs, each a process of its own, so that each starts cold and has its own peak. */
async function middleOf(runs: number, once: () => Promise<ImportRun>): Promise<ImportRun> {
  const all: ImportRun[] = [];
  for (let each = 0; each < runs; each++) all.push(await once());
  all.sort((a, b) => a.seconds - b.seconds);
  return all[runs >> 1]!;
}

async function measured(command: string, args: readonly string[]): Promise<ImportRun> {
  const { stdout } = await run(command, [...args]);
  return JSON.parse(stdout) as ImportRun;
}

/** Reads `file` with each reader, `runs` times in turn. `child` is the built or loadable import-child module. */
export async function benchImport(name: string, file: string, runs = 5): Promise<ImportBench> {
  const python = await pythonWithPandas();
  const child = join(import.meta.dirname, 'import-child.ts');
  const node = (mode: string) => () => measured(process.execPath, ['--import', 'tsx', child, mode, file]);
  return {
    name,
    megabytesOfText: (await stat(file)).size / 1e6,
    rimelog: await middleOf(runs, node('rimelog')),
    newlineScan: await middleOf(runs, node('newlines')),
    pandas: python === null ? null : await middleOf(runs, () => measured(python, ['-c', pandasRead, file])),
  };
}

/** One line a bench, with the ratios that issue and README quote. */
export function importBenchLine({
  name,
  megabytesOfText,
  rimelog,
  pandas,
  newlineScan,
}: ImportBench): string {
  const speed = (each: ImportRun): string => `${each.seconds.toFixed(2)} s, ${Math.round(each.megabytes)} MB`;
  const against =
    pandas === null
      ? 'pandas is not installed'
      : `pandas ${speed(pandas)}: ${(pandas.seconds / rimelog.seconds).toFixed(2)} times as fast, ${(rimelog.megabytes / pandas.megabytes).toFixed(2)} of its memory`;
  return `${name} (${Math.round(megabytesOfText)} MB): ${speed(rimelog)}; ${against}; newline scan ${newlineScan.seconds.toFixed(2)} s`;
}

/** Reads a file and counts its line ends, as the floor of any reader. */
export async function countLineEnds(file: string): Promise<number> {
  let count = 0;
  for await (const chunk of createReadStream(file, { highWaterMark: 1 << 19 })) {
    const bytes = chunk as Uint8Array;
    for (let at = bytes.indexOf(10); at >= 0; at = bytes.indexOf(10, at + 1)) count++;
  }
  return count;
}
