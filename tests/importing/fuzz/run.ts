import { damagedFile } from './mutate.ts';
import { keepsPromises } from './promises.ts';
import { shrunk } from './shrink.ts';

/**
 * The fuzz run at length: `npm run fuzz -- 20000` reads the files of seeds 0 to 19999, `-- 500 20000` those from
 * 20000 on. A file that breaks a promise is shrunk and printed as a line for regressions.json.
 */
const [count = 1000, from = 0] = process.argv.slice(2).map(Number);
const mostShrunk = 8;

const brokenBy = async (file: string): Promise<string | null> => {
  try {
    await keepsPromises(file, 7);
    return null;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
};

const kindOf = (message: string): string => message.slice(0, 30);
const failures = new Map<string, number>();
for (let seed = from; seed < from + count; seed++) {
  const file = damagedFile(seed);
  const broken = await brokenBy(file);
  if (broken === null) continue;
  const kind = kindOf(broken);
  const met = failures.get(kind) ?? 0;
  failures.set(kind, met + 1);
  if (met >= mostShrunk) continue;
  const least = await shrunk(file, async (shorter) => {
    const message = await brokenBy(shorter);
    return message !== null && kindOf(message) === kind;
  });
  console.log(JSON.stringify({ seed, broken: (await brokenBy(least))?.slice(0, 300), file: least }));
}
console.error(
  `${count} files from seed ${from}: ${[...failures.values()].reduce((sum, each) => sum + each, 0)} break a promise.`,
);
process.exitCode = failures.size > 0 ? 1 : 0;
