import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { makeSample } from './make-sample.ts';
import { scenarios } from './scenarios.ts';

/** `npm run samples`: writes every sample folder anew. */
const root = fileURLToPath(new URL('..', import.meta.url));
let total = 0;
for (const scenario of scenarios) {
  const folder = `${root}${scenario.folder}`;
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  let size = 0;
  for (const { name, bytes } of makeSample(scenario)) {
    writeFileSync(`${folder}/${name}`, bytes);
    size += bytes.length;
  }
  total += size;
  process.stdout.write(`${scenario.folder}: ${(size / 1e6).toFixed(2)} MB\n`);
}
process.stdout.write(`${scenarios.length} samples, ${(total / 1e6).toFixed(2)} MB\n`);
