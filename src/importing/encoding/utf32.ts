/** Whether a text is in UTF-32, by its mark or by the three NULs of every plain letter; null where it is not. */
export function utf32Of(
  sample: Uint8Array,
): { encoding: 'utf-32le' | 'utf-32be'; markLength: number } | null {
  const begins = (...bytes: number[]): boolean => bytes.every((byte, at) => sample[at] === byte);
  if (begins(0xff, 0xfe, 0, 0)) return { encoding: 'utf-32le', markLength: 4 };
  if (begins(0, 0, 0xfe, 0xff)) return { encoding: 'utf-32be', markLength: 4 };
  const length = Math.min(sample.length, 4096) & ~3;
  if (length < 32) return null;
  let little = 0;
  let big = 0;
  for (let at = 0; at < length; at += 4) {
    if (sample[at]! > 0 && sample[at + 1] === 0 && sample[at + 2] === 0 && sample[at + 3] === 0) little++;
    if (sample[at] === 0 && sample[at + 1] === 0 && sample[at + 2] === 0 && sample[at + 3]! > 0) big++;
  }
  if (little * 4 > 0.9 * length) return { encoding: 'utf-32le', markLength: 0 };
  return big * 4 > 0.9 * length ? { encoding: 'utf-32be', markLength: 0 } : null;
}

/** Reads UTF-32, which TextDecoder does not know, chunk by chunk. */
export class Utf32Decoder {
  private readonly isLittle: boolean;
  private rest: readonly number[] = [];

  constructor(encoding: string) {
    this.isLittle = encoding === 'utf-32le';
  }

  push(chunk: Uint8Array): string {
    const bytes = this.rest.length === 0 ? chunk : Uint8Array.from([...this.rest, ...chunk]);
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    const end = bytes.length & ~3;
    let text = '';
    for (let at = 0; at < end; at += 4) {
      const code = view.getUint32(at, this.isLittle);
      text += code > 0x10ffff || (code >= 0xd800 && code < 0xe000) ? '\ufffd' : String.fromCodePoint(code);
    }
    this.rest = [...bytes.subarray(end)];
    return text;
  }
}
