import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { makeSample } from '../../sample-logs/maker/make-sample.ts';
import { scenarios } from '../../sample-logs/maker/scenarios.ts';

const root = fileURLToPath(new URL('../../sample-logs/', import.meta.url));

function shipped(folder: string, name: string): string {
  const bytes = readFileSync(`${root}${folder}/${name}`);
  return (name.endsWith('.gz') ? gunzipSync(bytes) : bytes).toString('utf8');
}

/** One of each simulator and layout; `npm run samples` shows the rest by leaving the tree clean. */
const quick = ['slow-recovery', 'suction-rise', 'left-off-after-service'];

describe('the shipped samples', () => {
  it.each(scenarios.filter(({ folder }) => quick.includes(folder)))(
    '$folder is, byte for byte, what the maker makes',
    (scenario) => {
      const made = makeSample(scenario);
      expect(readdirSync(`${root}${scenario.folder}`).sort()).toEqual(made.map(({ name }) => name).sort());
      for (const { name, text } of made) expect(shipped(scenario.folder, name) === text, name).toBe(true);
    },
  );

  it('weigh at most 3 MB each and 12 MB together, in at least three dialects', () => {
    const sizes = scenarios.map(({ folder }) =>
      readdirSync(`${root}${folder}`).reduce(
        (sum, name) => sum + readFileSync(`${root}${folder}/${name}`).length,
        0,
      ),
    );
    expect(Math.max(...sizes)).toBeLessThan(3e6);
    expect(sizes.reduce((a, b) => a + b, 0)).toBeLessThan(12e6);
    expect(
      new Set(scenarios.map(({ dialect }) => `${dialect.delimiter}${dialect.time}${dialect.layout}`)).size,
    ).toBeGreaterThanOrEqual(3);
  });
});
