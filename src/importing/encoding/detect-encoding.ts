import chardet from 'chardet';
import { utf32Of } from './utf32.ts';

/** An encoding as TextDecoder names it. */
export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252' | 'ibm437' | 'macintosh' | string;

export interface EncodingVerdict {
  readonly encoding: Encoding;
  /** Bytes of a byte order mark to leave out. */
  readonly markLength: number;
  readonly because: string;
  /** False where another encoding is as possible; then the report says so. */
  readonly sure: boolean;
  /** What the character statistics suggest instead, where they do. */
  readonly suggestion: string | null;
}

function verdict(encoding: Encoding, markLength: number, because: string): EncodingVerdict {
  return { encoding, markLength, because, sure: true, suggestion: null };
}

/** Encodings that put ASCII bytes inside other characters, so that reading them as single bytes would go wrong. */
const multiByte = new Set([
  'Shift_JIS',
  'EUC-JP',
  'EUC-KR',
  'GB18030',
  'Big5',
  'ISO-2022-JP',
  'ISO-2022-KR',
  'ISO-2022-CN',
]);

/**
 * The encoding of an export from its first bytes: a byte order mark, else the pattern of NUL bytes that
 * UTF-16 leaves, else UTF-8 where every sequence is well formed (or nearly every one), else one byte a
 * character. Character statistics (chardet) only suggest, as they are often wrong about short headers; they
 * decide for the East Asian encodings, where reading single bytes could split a row wrongly.
 */
export function detectEncoding(sample: Uint8Array, complete: boolean): EncodingVerdict {
  if (sample[0] === 0xef && sample[1] === 0xbb && sample[2] === 0xbf)
    return verdict('utf-8', 3, 'it begins with a UTF-8 mark');
  const four = utf32Of(sample);
  if (four !== null)
    return verdict(four.encoding, four.markLength, 'it has four bytes a letter, three of them NUL');
  if (sample[0] === 0xff && sample[1] === 0xfe) return verdict('utf-16le', 2, 'it begins with a UTF-16 mark');
  if (sample[0] === 0xfe && sample[1] === 0xff) return verdict('utf-16be', 2, 'it begins with a UTF-16 mark');
  const wide = sixteenBits(sample);
  if (wide !== null) return verdict(wide, 0, 'every other byte is NUL, as in UTF-16');
  const { wellFormed, broken } = utf8Sequences(sample, complete);
  if (broken === 0) return verdict('utf-8', 0, wellFormed === 0 ? 'it is plain ASCII' : 'it is valid UTF-8');
  if (wellFormed > broken) {
    return {
      encoding: 'utf-8',
      markLength: 0,
      because: 'nearly all of it is valid UTF-8',
      sure: false,
      suggestion: null,
    };
  }
  const eastAsian = eastAsianDegree(sample);
  if (eastAsian !== null) {
    return {
      encoding: eastAsian,
      markLength: 0,
      because: 'its degree signs are those of this encoding',
      sure: false,
      suggestion: null,
    };
  }
  const guesses = chardet.analyse(sample.subarray(0, 65_536));
  const best = guesses[0];
  if (best !== undefined && multiByte.has(best.name) && best.confidence >= 90 && decodes(sample, best.name)) {
    return {
      encoding: best.name.toLowerCase(),
      markLength: 0,
      because: 'its characters are those of this encoding',
      sure: false,
      suggestion: null,
    };
  }
  const byDegree = degreeSignOf(sample);
  const suggestion = best !== undefined && !/1252|8859-1$/u.test(best.name) ? best.name : null;
  return {
    encoding: byDegree,
    markLength: 0,
    because: 'it is not UTF-8; read one byte a character',
    sure: false,
    suggestion,
  };
}

function sixteenBits(sample: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  const length = Math.min(sample.length, 4096) & ~1;
  if (length < 4) return null;
  let even = 0;
  let odd = 0;
  for (let at = 0; at < length; at += 2) {
    if (sample[at] === 0) even++;
    if (sample[at + 1] === 0) odd++;
  }
  const pairs = length / 2;
  if (odd > 0.6 * pairs && even < 0.1 * pairs) return 'utf-16le';
  if (even > 0.6 * pairs && odd < 0.1 * pairs) return 'utf-16be';
  return null;
}

/** Counts multi-byte sequences of UTF-8 that are well formed and bytes that belong to none. */
function utf8Sequences(bytes: Uint8Array, complete: boolean): { wellFormed: number; broken: number } {
  let wellFormed = 0;
  let broken = 0;
  for (let at = 0; at < bytes.length; at++) {
    const byte = bytes[at]!;
    if (byte < 0x80) continue;
    const length =
      byte >= 0xf0 && byte < 0xf5 ? 4 : byte >= 0xe0 && byte < 0xf0 ? 3 : byte >= 0xc2 && byte < 0xe0 ? 2 : 0;
    let follows = 1;
    while (follows < length && at + follows < bytes.length && (bytes[at + follows]! & 0xc0) === 0x80)
      follows++;
    if (length > 0 && follows === length) {
      wellFormed++;
      at += length - 1;
    } else if (!complete && length > 0 && at + follows >= bytes.length) break;
    else broken++;
  }
  return { wellFormed, broken };
}

function decodes(sample: Uint8Array, name: string): boolean {
  try {
    new TextDecoder(name, { fatal: true }).decode(sample, { stream: true });
    return true;
  } catch {
    return false;
  }
}

/** Degree signs of two bytes, after the tables of the Encoding Standard (WHATWG), from memory. */
const eastAsianDegrees = [
  { encoding: 'gb18030', bytes: [0xa1, 0xe3] },
  { encoding: 'shift_jis', bytes: [0x81, 0x8b] },
  { encoding: 'euc-kr', bytes: [0xa1, 0xc6] },
  { encoding: 'euc-jp', bytes: [0xa1, 0xeb] },
  { encoding: 'big5', bytes: [0xa2, 0x58] },
] as const;

/** The East Asian encoding whose degree sign stands before F or C, where every byte of the text fits it. */
function eastAsianDegree(sample: Uint8Array): Encoding | null {
  for (const { encoding, bytes } of eastAsianDegrees) {
    for (let at = sample.indexOf(bytes[0]); at >= 0; at = sample.indexOf(bytes[0], at + 1)) {
      const unit = sample[at + 2];
      if (sample[at + 1] !== bytes[1] || (unit !== 67 && unit !== 70)) continue;
      if (decodes(sample, encoding)) return encoding;
      break;
    }
  }
  return null;
}

/** A degree sign before F or C tells the single-byte encodings apart: B0 Windows, F8 DOS, A1 Macintosh. */
function degreeSignOf(sample: Uint8Array): Encoding {
  const seen = { windows: 0, dos: 0, macintosh: 0 };
  for (let at = 0; at + 1 < sample.length; at++) {
    const byte = sample[at]!;
    if (byte !== 0xb0 && byte !== 0xf8 && byte !== 0xa1) continue;
    const next = sample[at + 1]!;
    if (next !== 67 && next !== 70) continue;
    if (byte === 0xb0) seen.windows++;
    else if (byte === 0xf8) seen.dos++;
    else seen.macintosh++;
  }
  if (seen.dos > seen.windows) return 'ibm437';
  if (seen.macintosh > seen.windows) return 'macintosh';
  return 'windows-1252';
}
