import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Part } from './upload.ts';

/** A shipped sample as the parts of an upload: its exports, and its site file when it is wanted. */
export function sampleParts(scenario: string, { site = true } = {}): Part[] {
  const folder = fileURLToPath(new URL(`../../sample-logs/${scenario}/`, import.meta.url));
  const part = (field: string, name: string): Part => ({
    field,
    name,
    content: new Uint8Array(readFileSync(folder + name)),
  });
  const exports = readdirSync(folder).filter((name) => /\.csv(\.gz)?$/.test(name));
  return [...exports.map((name) => part('export', name)), ...(site ? [part('site', 'site.yaml')] : [])];
}
