import { execFile } from 'node:child_process';
import { createReadStream, existsSync } from 'node:fs';
import { stat } from 'node:fs/promises';
import { promisify } from 'node:util';
import { middle } from './measure.ts';

const run = promisify(execFile);

export interface ImportRun {
  readonly seconds: number;
  /** User and system time of all its threads while it read. */
  readonly cpuSeconds: number;
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
cpu = time.process_time()
frame = pd.read_csv(sys.argv[1])
column = frame.columns[0]
frame[column] = pd.to_datetime(frame[column], format='%Y-%m-%d %H:%M:%S')
print(json.dumps({'seconds': time.perf_counter() - start, 'cpuSeconds': time.process_time() - cpu, 'megabytes': resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024}))
`;

/** The middle of each figure over several runs. */
function middleRun(all: readonly ImportRun[]): ImportRun {
  const of = (pick: (run: ImportRun) => number): number => middle(all.map(pick));
  return {
    seconds: of((run) => run.seconds),
    cpuSeconds: of((run) => run.cpuSeconds),
    megabytes: of((run) => run.megabytes),
  };
}

async function measured(command: string, args: readonly string[]): Promise<ImportRun> {
  const { stdout } = await run(command, [...args]);
  return JSON.parse(stdout) as ImportRun;
}

/** Reads `file` with each reader, `runs` times in turn. `child` is import-child.ts, built. */
export async function benchImport(name: string, file: string, child: string, runs = 5): Promise<ImportBench> {
  const python = await pythonWithPandas();
  const node = (mode: string) => measured(process.execPath, [child, mode, file]);
  const rimelog: ImportRun[] = [];
  const newlineScan: ImportRun[] = [];
  const pandas: ImportRun[] = [];
  // Each run a process of its own, so that each starts cold and has its own peak; in turn, so that all meet one load.
  for (let each = 0; each < runs; each++) {
    rimelog.push(await node('rimelog'));
    if (python !== null) pandas.push(await measured(python, ['-c', pandasRead, file]));
    newlineScan.push(await node('newlines'));
  }
  return {
    name,
    megabytesOfText: (await stat(file)).size / 1e6,
    rimelog: middleRun(rimelog),
    newlineScan: middleRun(newlineScan),
    pandas: python === null ? null : middleRun(pandas),
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
  const speed = (each: ImportRun): string =>
    `${each.seconds.toFixed(2)} s (CPU ${each.cpuSeconds.toFixed(2)} s), ${Math.round(each.megabytes)} MB`;
  const against =
    pandas === null
      ? 'pandas is not installed'
      : `pandas ${speed(pandas)}: ${(pandas.seconds / rimelog.seconds).toFixed(2)} times as fast (CPU ${(pandas.cpuSeconds / rimelog.cpuSeconds).toFixed(2)}), ${(rimelog.megabytes / pandas.megabytes).toFixed(2)} of its memory`;
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
