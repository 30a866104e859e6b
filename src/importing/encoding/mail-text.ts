import { ImportRefusal } from '../readings.ts';

/** Undoes, chunk by chunk, what mail did to a text. Works on bytes; a character is one byte here. */
export interface MailText {
  /** What was undone and what showed it, for the report. */
  readonly chosen: string;
  readonly because: string;
  push(chunk: Uint8Array): Uint8Array;
  end(): Uint8Array;
}

const sampleLength = 16_384;
const longestLine = 67_108_864;

/** What mail did to the text that begins with `sample`, or null for nothing. */
export function mailTextOf(sample: Uint8Array, name: string): MailText | null {
  const text = latin(sample.subarray(0, sampleLength));
  if (isQuotedPrintable(text)) return new WholeLines(name, quotedPrintable, fromQuotedPrintable);
  const width = wrapWidth(text);
  return width === null ? null : new WholeLines(name, wrappedAt(width), (part) => withoutWraps(part, width));
}

const quotedPrintable = {
  chosen: 'quoted-printable undone; lines are counted without the breaks of the mail',
  because: 'letters stand as =C2=B0 and lines go on behind =',
};

function wrappedAt(width: number): { chosen: string; because: string } {
  return {
    chosen: `rows put together that a mail cut at ${width} characters; lines are counted without its breaks`,
    because: 'a line begins with a time only where the one before is shorter',
  };
}

/** Letters written as `=C2=B0` and lines that go on behind a `=` (RFC 2045, section 6.7). */
function isQuotedPrintable(text: string): boolean {
  return /=\r?\n/u.test(text) && /=[0-9A-F]{2}=[0-9A-F]{2}/u.test(text);
}

function fromQuotedPrintable(text: string): string {
  return text
    .replace(/=[ \t]*\r?\n/gu, '')
    .replace(/=([0-9A-F]{2})/giu, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));
}

const fewestWraps = 5;
const narrowest = 40;
const beginsWithTime = /^["']?\d{1,4}[-./]\d{1,2}[-./]\d{1,4}/u;

/**
 * The width at which lines were cut: most lines behind those of that length begin with no time, and nearly all behind
 * shorter ones do. Null where they were not.
 */
function wrapWidth(text: string): number | null {
  const lines = text.split(/\r?\n/u).slice(0, -1);
  const width = lines.reduce((most, line) => Math.max(most, charactersOf(line)), 0);
  if (width < narrowest || width > 1000) return null;
  let cut = 0;
  let behindCut = 0;
  let whole = 0;
  let behindWhole = 0;
  for (let at = 1; at < lines.length; at++) {
    const begins = beginsWithTime.test(lines[at]!);
    if (isCutAt(lines[at - 1]!, width)) {
      cut++;
      if (begins) behindCut++;
    } else {
      whole++;
      if (begins) behindWhole++;
    }
  }
  const isWrapped = cut >= fewestWraps && cut * 4 > lines.length && behindCut < 0.3 * cut;
  return isWrapped && whole >= fewestWraps && behindWhole >= 0.95 * whole ? width : null;
}

function isCutAt(line: string, width: number): boolean {
  return line.length === width || charactersOf(line) === width;
}

/** Characters of a line of UTF-8 given byte by byte. */
function charactersOf(line: string): number {
  return line.replace(/[\u0080-\u00bf]/gu, '').length;
}

function withoutWraps(text: string, width: number): string {
  const lines = text.split('\n');
  let joined = '';
  for (const [at, line] of lines.entries()) {
    const bare = line.endsWith('\r') ? line.slice(0, -1) : line;
    const goesOn = isCutAt(bare, width) && at + 1 < lines.length && !beginsWithTime.test(lines[at + 1]!);
    joined += goesOn && lines[at + 1] !== '' ? bare : at + 1 < lines.length ? `${line}\n` : line;
  }
  return joined;
}

/** Hands whole rows to a change of text; a row is whole where the line behind it has begun with a time. */
class WholeLines implements MailText {
  readonly chosen: string;
  readonly because: string;
  private readonly name: string;
  private readonly undo: (text: string) => string;
  private held = '';

  constructor(name: string, told: { chosen: string; because: string }, undo: (text: string) => string) {
    this.name = name;
    this.chosen = told.chosen;
    this.because = told.because;
    this.undo = undo;
  }

  push(chunk: Uint8Array): Uint8Array {
    this.held += latin(chunk);
    const end = lastBegin(this.held);
    if (end < 0) {
      if (this.held.length <= longestLine) return new Uint8Array(0);
      throw new ImportRefusal(
        'line-too-long',
        `${this.name}: a line of more than 64 MB cannot be part of an export. Check how the file was made.`,
      );
    }
    const whole = this.held.slice(0, end);
    this.held = this.held.slice(end);
    return bytesOf(this.undo(whole));
  }

  end(): Uint8Array {
    return bytesOf(this.undo(this.held));
  }
}

/** Position of the last line that begins with a time behind a line end that no `=` stands before; -1 for none. */
function lastBegin(text: string): number {
  for (let at = text.lastIndexOf('\n'); at > 0; at = text.lastIndexOf('\n', at - 1)) {
    const isSoft = /=[ \t\r]*$/u.test(text.slice(Math.max(0, at - 8), at));
    if (!isSoft && beginsWithTime.test(text.slice(at + 1, at + 24))) return at + 1;
  }
  return -1;
}

/** Bytes as characters of the same number. */
function latin(bytes: Uint8Array): string {
  // TextDecoder reads “latin1” as Windows-1252, whose upper rows differ from the bytes.
  let text = '';
  for (let from = 0; from < bytes.length; from += 8192) {
    text += String.fromCharCode(...bytes.subarray(from, from + 8192));
  }
  return text;
}

function bytesOf(text: string): Uint8Array {
  return Uint8Array.from(text, (character) => character.charCodeAt(0));
}
