import type { Encoding } from './detect-encoding.ts';

/**
 * The DOS code page is not among TextDecoder's; its upper half as far as exports use it (IBM code page 437,
 * after the Unicode Consortium's mapping CP437.TXT).
 */
const dosUpperHalf =
  'ÇüéâäàåçêëèïîìÄÅÉæÆôöòûùÿÖÜ¢£¥₧ƒáíóúñÑªº¿⌐¬½¼¡«»░▒▓│┤╡╢╖╕╣║╗╝╜╛┐└┴┬├─┼╞╟╚╔╩╦╠═╬╧╨╤╥╙╘╒╓╫╪┘┌█▄▌▐▀αßΓπΣσµτΦΘΩδ∞φε∩≡±≥≤⌠⌡÷≈°∙·√ⁿ²■\u00a0';

/** Turns chunks of any encoding into chunks of UTF-8; UTF-8 itself passes through untouched. */
export class Transcoder {
  private readonly decoder: TextDecoder | null;
  private readonly dos: boolean;
  private readonly encoder = new TextEncoder();
  /** NUL bytes and byte order marks met inside the text. */
  invisibleBytes = 0;

  constructor(encoding: Encoding) {
    this.dos = encoding === 'ibm437';
    this.decoder = encoding === 'utf-8' || this.dos ? null : new TextDecoder(encoding, { ignoreBOM: true });
  }

  push(chunk: Uint8Array): Uint8Array {
    if (this.dos) return this.encoder.encode(fromDos(chunk));
    if (this.decoder === null) {
      this.invisibleBytes += countOf(chunk, 0) + countMarks(chunk);
      return chunk;
    }
    return this.encoder.encode(this.decoder.decode(chunk, { stream: true }));
  }

  end(): Uint8Array {
    return this.decoder === null ? new Uint8Array(0) : this.encoder.encode(this.decoder.decode());
  }
}

function countOf(bytes: Uint8Array, byte: number): number {
  let count = 0;
  for (let at = bytes.indexOf(byte); at >= 0; at = bytes.indexOf(byte, at + 1)) count++;
  return count;
}

function countMarks(bytes: Uint8Array): number {
  let count = 0;
  for (let at = bytes.indexOf(0xef); at >= 0; at = bytes.indexOf(0xef, at + 1)) {
    if (bytes[at + 1] === 0xbb && bytes[at + 2] === 0xbf) count++;
  }
  return count;
}

function fromDos(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) text += byte < 0x80 ? String.fromCharCode(byte) : dosUpperHalf[byte - 0x80];
  return text;
}

const strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
const single = new TextDecoder('windows-1252');

/** Text of a cell or row: UTF-8, or Windows-1252 where it is not valid UTF-8, so that a degree sign stays one. */
export function textOf(bytes: Uint8Array, from: number, to: number): string {
  if (to - from <= 48) {
    const short = asciiText(bytes, from, to);
    if (short !== null) return short;
  }
  const part = bytes.subarray(from, to);
  try {
    return strict.decode(part);
  } catch {
    return single.decode(part);
  }
}

function asciiText(bytes: Uint8Array, from: number, to: number): string | null {
  let text = '';
  for (let at = from; at < to; at++) {
    const byte = bytes[at]!;
    if (byte >= 0x80) return null;
    text += String.fromCharCode(byte);
  }
  return text;
}
