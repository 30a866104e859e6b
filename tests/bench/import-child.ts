import { readExports } from '../../src/importing/read-exports.ts';
import { openExports } from '../../src/opening/open-exports.ts';
import { countLineEnds } from './import.ts';

/** One reading in a process of its own: `import-child.ts rimelog|newlines FILE` prints its time and peak memory. */
const [mode, file] = process.argv.slice(2) as [string, string];
const started = performance.now();
const before = process.cpuUsage();
if (mode === 'newlines') await countLineEnds(file);
else await readExports(await openExports([file]), { timeZone: 'UTC', timeZoneSource: 'option' });
const seconds = (performance.now() - started) / 1000;
const { user, system } = process.cpuUsage(before);
const cpuSeconds = (user + system) / 1e6;
process.stdout.write(
  JSON.stringify({ seconds, cpuSeconds, megabytes: process.resourceUsage().maxRSS / 1024 }),
);
