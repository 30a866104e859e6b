import type { Encoding } from './detect-encoding.ts';
import { Utf32Decoder } from './utf32.ts';

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
  private readonly wide: Utf32Decoder | null;
  private readonly encoder = new TextEncoder();
  /** NUL bytes and byte order marks met inside the text. */
  invisibleBytes = 0;

  constructor(encoding: Encoding) {
    this.dos = encoding === 'ibm437';
    this.wide = encoding.startsWith('utf-32') ? new Utf32Decoder(encoding) : null;
    const isOwn = encoding === 'utf-8' || this.dos || this.wide !== null;
    this.decoder = isOwn ? null : new TextDecoder(encoding, { ignoreBOM: true });
  }

  push(chunk: Uint8Array): Uint8Array {
    if (this.dos) return this.encoder.encode(fromDos(chunk));
    if (this.wide !== null) return this.encoder.encode(this.wide.push(chunk));
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

/**
 * Text of a cell or row: UTF-8, and Windows-1252 for each byte that belongs to no valid sequence, so that a degree
 * sign stays one. A row as a whole reads as its cells do one by one.
 */
export function textOf(bytes: Uint8Array, from: number, to: number): string {
  if (to - from <= 48) {
    const short = asciiText(bytes, from, to);
    if (short !== null) return short;
  }
  const part = bytes.subarray(from, to);
  try {
    return strict.decode(part);
  } catch {
    return mixedText(part);
  }
}

function mixedText(bytes: Uint8Array): string {
  let text = '';
  let from = 0;
  let at = 0;
  while (at < bytes.length) {
    const length = sequenceLength(bytes, at);
    if (length === 0) {
      text += strict.decode(bytes.subarray(from, at)) + single.decode(bytes.subarray(at, at + 1));
      from = at + 1;
    }
    at += Math.max(1, length);
  }
  return text + strict.decode(bytes.subarray(from));
}

/** Bytes of the UTF-8 sequence that begins at `at` (The Unicode Standard, table 3-7); 0 where none does. */
function sequenceLength(bytes: Uint8Array, at: number): number {
  const lead = bytes[at]!;
  if (lead < 0x80) return 1;
  if (lead < 0xc2 || lead > 0xf4) return 0;
  const second = bytes[at + 1] ?? 0;
  const least = lead === 0xe0 ? 0xa0 : lead === 0xf0 ? 0x90 : 0x80;
  const most = lead === 0xed ? 0x9f : lead === 0xf4 ? 0x8f : 0xbf;
  if (second < least || second > most) return 0;
  const length = lead < 0xe0 ? 2 : lead < 0xf0 ? 3 : 4;
  for (let next = at + 2; next < at + length; next++) if (((bytes[next] ?? 0) & 0xc0) !== 0x80) return 0;
  return length;
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
