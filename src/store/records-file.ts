import { open } from 'node:fs/promises';

/**
 * All records of a result, one after the other, `count` 32-bit floats each in the byte order of the machine (the
 * folder does not travel); NaN where nothing is known. Single precision holds 0.00001 degrees at 40, far below
 * any probe.
 */
export async function writeRecords(
  path: string,
  records: Iterable<Float64Array | Uint8Array>,
): Promise<void> {
  const handle = await open(path, 'wx', 0o600);
  try {
    for (const record of records) {
      await handle.writeFile(new Uint8Array(new Float32Array(record).buffer));
    }
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Samples `from` to `to` of record `index`, of `count` samples a record. */
export async function readRecord(
  path: string,
  count: number,
  index: number,
  range: { readonly from: number; readonly to: number },
): Promise<Float64Array> {
  const length = Math.max(0, range.to - range.from);
  const samples = new Float32Array(length);
  const bytes = new Uint8Array(samples.buffer);
  const handle = await open(path, 'r');
  try {
    let done = 0;
    while (done < bytes.length) {
      const position = (index * count + range.from) * 4 + done;
      const { bytesRead } = await handle.read(bytes, done, bytes.length - done, position);
      if (bytesRead === 0) throw new RangeError('The record file ends before the record does.');
      done += bytesRead;
    }
  } finally {
    await handle.close();
  }
  return new Float64Array(samples);
}
