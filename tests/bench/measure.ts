import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What one whole process took, from its start to its end. */
export interface Usage {
  readonly wallSeconds: number;
  /** User and system time of all its threads. */
  readonly cpuSeconds: number;
  /** Largest resident set. */
  readonly megabytes: number;
}

/** A program to measure: a script of Node, or of Python, which must print its usage as its last line of JSON. */
export interface Program {
  readonly name: string;
  readonly command: 'node' | 'python';
  readonly args: readonly string[];
}

const hook = join(import.meta.dirname, 'report-usage.cjs');

/** Runs a program once. Throws when it does not end with status 0. */
export async function measureOnce(
  program: Program,
  python: string | null,
  usageFile: string,
): Promise<Usage> {
  const isNode = program.command === 'node';
  const command = isNode ? process.execPath : (python ?? 'python3');
  const args = isNode ? ['--require', hook, ...program.args] : [...program.args];
  const started = performance.now();
  const child = spawn(command, args, {
    env: { ...process.env, BENCH_USAGE: usageFile },
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const printed: Buffer[] = [];
  child.stdout.on('data', (chunk: Buffer) => printed.push(chunk));
  const [code] = (await once(child, 'close')) as [number | null];
  const wallSeconds = (performance.now() - started) / 1000;
  if (code !== 0)
    throw new Error(`${program.name} ended with status ${code}: ${[command, ...args].join(' ')}`);
  const usage = isNode ? readFileSync(usageFile, 'utf8') : Buffer.concat(printed).toString();
  const { cpuSeconds, megabytes } = JSON.parse(usage) as Usage;
  return { wallSeconds, cpuSeconds, megabytes };
}

/** Runs all programs in turn, again and again, and takes the median of each figure: a busy minute hits all alike. */
export async function measureInTurn(
  programs: readonly Program[],
  runs: number,
  python: string | null,
  usageFile: string,
): Promise<Usage[]> {
  const all: Usage[][] = programs.map(() => []);
  for (let run = 0; run < runs; run++) {
    for (const [at, program] of programs.entries()) {
      all[at]!.push(await measureOnce(program, python, usageFile));
    }
  }
  return all.map((usages) => ({
    wallSeconds: middle(usages.map((usage) => usage.wallSeconds)),
    cpuSeconds: middle(usages.map((usage) => usage.cpuSeconds)),
    megabytes: middle(usages.map((usage) => usage.megabytes)),
  }));
}

export function middle(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[values.length >> 1]!;
}
