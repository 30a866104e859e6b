import type { Binary } from './corpus.ts';

/** A shorter file that still fails: lines, then bytes, taken out in ever smaller pieces. */
export async function shrunk(file: Binary, fails: (file: Binary) => Promise<boolean>): Promise<Binary> {
  const lines = await fewest(file.split('\n'), (pieces) => fails(pieces.join('\n')));
  const marks = await fewest([...lines.join('\n')], (pieces) => fails(pieces.join('')));
  return marks.join('');
}

async function fewest(pieces: readonly Binary[], fail: (pieces: readonly Binary[]) => Promise<boolean>) {
  let left = pieces;
  for (
    let length = Math.ceil(left.length / 2);
    length > 0;
    length = length === 1 ? 0 : Math.ceil(length / 2)
  ) {
    for (let from = 0; from < left.length; ) {
      const without = [...left.slice(0, from), ...left.slice(from + length)];
      if (await fail(without)) left = without;
      else from += length;
    }
  }
  return left;
}
