import { once } from 'node:events';
import { createWriteStream } from 'node:fs';

/** Writes a header and `rows` lines, without holding the file in memory. */
export async function writeLines(
  file: string,
  header: string,
  rows: number,
  lineOf: (row: number) => string,
): Promise<void> {
  const out = createWriteStream(file);
  let text = `${header}\n`;
  for (let row = 0; row < rows; row++) {
    text += `${lineOf(row)}\n`;
    if (text.length < 1 << 20) continue;
    if (!out.write(text)) await once(out, 'drain');
    text = '';
  }
  out.end(text);
  await once(out, 'finish');
}

/** `2026-01-01 00:00:00` and so on, one minute apart. */
export function stampOf(minute: number): string {
  return new Date(Date.UTC(2026, 0, 1) + minute * 60_000).toISOString().slice(0, 19).replace('T', ' ');
}

/** Equal numbers from 0 to 1 on every machine: the linear congruence of Numerical Recipes. */
export function numbersFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 4_294_967_296;
  };
}
