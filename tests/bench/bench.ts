import { execFile } from 'node:child_process';
import { existsSync, mkdirSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { benchImport, importBenchLine, pythonWithPandas } from './import.ts';
import { writeLongExport } from './make-long.ts';
import { writeWideExport } from './make-wide.ts';
import { measureInTurn, middle, type Program, type Usage } from './measure.ts';
import type { Stages } from './stages-child.ts';
import { comparisonTable } from './table.ts';

/** `npm run bench [-- RUNS]`: speed and memory of whole processes, as ratios within one run. */
const runs = Number(process.argv[2] ?? 5);
const root = join(import.meta.dirname, '..', '..');
const folder = join(root, 'out', 'bench');
const rimelog = process.env.RIMELOG_BUILT ?? join(root, 'dist', 'rimelog.js');
const usageFile = join(folder, 'usage.json');
const say = (text: string): void => void process.stdout.write(`${text}\n`);

if (!existsSync(rimelog)) throw new Error(`${rimelog} is not there: run \`npm run build\` first.`);
mkdirSync(folder, { recursive: true });
const inputs = {
  wide: join(folder, 'wide.csv'),
  small: join(folder, 'wide-13.csv'),
  year: join(folder, 'wide-year.csv'),
  long: join(folder, 'long.csv'),
};
if (!existsSync(inputs.wide)) await writeWideExport(inputs.wide, { circuits: 23, months: 1 });
if (!existsSync(inputs.small)) await writeWideExport(inputs.small, { circuits: 13, months: 1 });
if (!existsSync(inputs.year)) await writeWideExport(inputs.year, { circuits: 23, months: 12 });
if (!existsSync(inputs.long)) await writeLongExport(inputs.long, 5_000_000);

const reader = join(folder, 'built', 'import-child.js');
const stagesChild = join(folder, 'built', 'stages-child.js');
const python = await pythonWithPandas();
say(
  `${cpus()[0]!.model}, ${cpus().length} processors, Node ${process.version}; medians of ${runs} runs in turn`,
);
if (python === null) say('pandas is not installed: its columns are left out.');

const command = (name: string, ...args: string[]): Program => ({
  name,
  command: 'node',
  args: [rimelog, ...args],
});
const scan = (file: string): Program => ({
  name: 'newline scan',
  command: 'node',
  args: [join(import.meta.dirname, 'newline-scan.mjs'), file],
});
const peer: Program = {
  name: 'pandas and scipy',
  command: 'python',
  args: [join(import.meta.dirname, 'peer_pandas.py'), inputs.wide],
};
const inTurn = (programs: readonly Program[]): Promise<Usage[]> =>
  measureInTurn(programs, runs, python, usageFile);

const whole = [
  command('rimelog check --json', 'check', inputs.wide, '--json'),
  ...(python === null ? [] : [peer]),
  scan(inputs.wide),
];
say('\nA month of 23 circuits, 120 points at one minute (26 MB)');
say(comparisonTable(whole, await inTurn(whole)));

const month = [
  command('rimelog check --json', 'check', inputs.small, '--json'),
  command('rimelog audit --tables', 'audit', inputs.small, '--tables', join(folder, 'tables')),
  scan(inputs.small),
];
say('\nA month of 13 circuits, 70 points at one minute (15 MB)');
say(comparisonTable(month, await inTurn(month)));

const stages: { readonly cold: Stages; readonly warm: Stages }[] = [];
for (let run = 0; run < runs; run++) {
  const { stdout } = await promisify(execFile)(process.execPath, [stagesChild, inputs.small]);
  stages.push(JSON.parse(stdout) as (typeof stages)[number]);
}
for (const how of ['cold', 'warm'] as const) {
  const all = stages.map((run) => run[how]);
  const seconds = (name: keyof Stages): string => middle(all.map((one) => one[name])).toFixed(2);
  const analysing = ({ signals, judging }: Stages): number => signals + judging;
  const toTypedArrays = middle(all.map((one) => analysing(one) / one.reading)).toFixed(2);
  const toLog = middle(all.map((one) => analysing(one) / (one.reading + one.arranging))).toFixed(2);
  say(
    `Stages of the same, seconds of the working thread, ${how}: reading ${seconds('reading')} s, arranging ${seconds('arranging')} s, signals ${seconds('signals')} s, analyses and judgement ${seconds('judging')} s; signals and judgement ÷ reading into a log ${toLog}, ÷ reading into columns ${toTypedArrays}`,
  );
}

say('\nReading alone');
const wide = await benchImport('wide, a month', inputs.wide, reader, runs);
say(importBenchLine(wide));
say(importBenchLine(await benchImport('long, 5 million rows', inputs.long, reader, Math.min(runs, 3))));
const year = await benchImport('wide, a year', inputs.year, reader, 1);
say(importBenchLine(year));
const longer = year.rimelog.cpuSeconds / wide.rimelog.cpuSeconds;
say(`A year ÷ a month: ${longer.toFixed(1)} of its CPU time (12 times the rows)`);
