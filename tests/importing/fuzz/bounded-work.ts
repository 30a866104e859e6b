import { TimeTokens } from '../../../src/importing/time/time-tokens.ts';

/** Times that a stamp was looked at per byte of the file, and what the search for a table may add. */
const mostLooksPerByte = 60;
const looksToBegin = 20_000;

/** Runs and throws as soon as the work is out of proportion to the `bytes` that are read. */
export async function withBoundedWork<T>(bytes: number, run: () => Promise<T>): Promise<T> {
  const { read } = TimeTokens.prototype;
  let looks = 0;
  TimeTokens.prototype.read = function (...cell) {
    if (++looks > looksToBegin + mostLooksPerByte * bytes)
      throw new Error(`work in proportion: ${looks} looks at ${bytes} bytes`);
    return read.apply(this, cell);
  };
  try {
    return await run();
  } finally {
    TimeTokens.prototype.read = read;
  }
}
