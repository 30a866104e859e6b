import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { type FaultName, faultNames } from '../../sample-logs/maker/fault-catalogue.ts';
import { evaluationCases, type SeedSet, seedSets } from './cases.ts';
import { pictureMisses } from './misses.ts';
import { evaluationReport } from './report.ts';
import { runAll } from './run-all.ts';

/**
 * `npm run evaluate -- [--set tuning|holdout] [--stores N] [--skip N] [--only FAULT|healthy|projection] [--simulator one|two]
 * [--through export|log] [--return-air] [--lead] [--hours N,N] [--workers N] [--out NAME]`: store-months with a known truth through the whole pipeline.
 */
const { values } = parseArgs({
  options: {
    set: { type: 'string', default: 'tuning' },
    stores: { type: 'string', default: '24' },
    skip: { type: 'string', default: '0' },
    only: { type: 'string' },
    simulator: { type: 'string' },
    through: { type: 'string', default: 'export' },
    'return-air': { type: 'boolean', default: false },
    lead: { type: 'boolean', default: false },
    hours: { type: 'string', default: '' },
    workers: { type: 'string', default: '2' },
    out: { type: 'string' },
  },
});
const set = oneOf('set', values.set, Object.keys(seedSets)) as SeedSet;
const only =
  values.only === undefined
    ? null
    : (oneOf('only', values.only, ['healthy', 'projection', ...faultNames]) as
        | FaultName
        | 'healthy'
        | 'projection');
const simulator =
  values.simulator === undefined
    ? null
    : (oneOf('simulator', values.simulator, ['one', 'two']) as 'one' | 'two');
const through = oneOf('through', values.through, ['export', 'log']) as 'export' | 'log';
const cases = evaluationCases({
  set,
  stores: Number(values.stores),
  skip: Number(values.skip),
  only,
  simulator,
  returnAir: values['return-air'],
});
const started = performance.now();
const outcomes = await runAll(
  cases,
  { through, lead: values.lead, hours: hoursIn(values.hours), only, returnAir: values['return-air'] },
  Number(values.workers),
  (done) => {
    if (process.stderr.isTTY) process.stderr.write(`\r${done} of ${cases.length} stores`);
  },
);
const call = `npm run evaluate -- ${process.argv.slice(2).join(' ')}`.trim();
const seconds = (performance.now() - started) / 1000;
const report = `Command: \`${call}\`. ${cases.length} store-months of ${only === 'projection' ? '60' : '14 to 30'} days, set ${set}, ${seconds.toFixed(0)} s.\n\n${evaluationReport(outcomes)}\n`;
const folder = fileURLToPath(new URL('../../out/evaluation/', import.meta.url));
mkdirSync(folder, { recursive: true });
const name = values.out ?? [set, only, simulator].filter((part) => part !== null).join('-');
writeFileSync(`${folder}${name}.md`, report);
writeFileSync(`${folder}${name}.json`, JSON.stringify(outcomes, null, 1));
for (const miss of pictureMisses(cases, outcomes, 8))
  writeFileSync(`${folder}${name}-${miss.name}`, miss.svg);
process.stdout.write(
  `\n${report}\nWritten to out/evaluation/${name}.md, with pictures of the worst misses beside it.\n`,
);

function hoursIn(text: string): number[] {
  const hours = text
    .split(',')
    .filter((part) => part !== '')
    .map(Number);
  if (hours.every((each) => each > 0)) return hours;
  process.stderr.write(`--hours must be hours like 12,30, not "${text}".\n`);
  process.exit(2);
}

function oneOf(flag: string, value: string | undefined, allowed: readonly string[]): string {
  if (value !== undefined && allowed.includes(value)) return value;
  process.stderr.write(`--${flag} must be one of ${allowed.join(', ')}, not "${value}".\n`);
  process.exit(2);
}
