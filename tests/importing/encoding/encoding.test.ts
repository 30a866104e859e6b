import { describe, expect, it } from 'vitest';
import { detectEncoding } from '../../../src/importing/encoding/detect-encoding.ts';
import { Transcoder, textOf } from '../../../src/importing/encoding/transcode.ts';
import { oneByte, utf8, utf16 } from '../damaged/same-log.ts';
import { onlyReport, readContent } from '../support.ts';

const text = 'Time,M01 air (°F)\n2026-09-01 00:00,36.4\n'.repeat(8);
const found = (bytes: Uint8Array): string => detectEncoding(bytes, true).encoding;

describe('encodings', () => {
  it('are told by a mark, by NUL bytes, by well-formed UTF-8, by the degree sign', () => {
    expect(found(utf8(text))).toBe('utf-8');
    expect(found(utf16(text, true))).toBe('utf-16le');
    expect(found(utf16(text, false))).toBe('utf-16be');
    expect(found(oneByte(text, 0xb0))).toBe('windows-1252');
    expect(found(oneByte(text, 0xf8))).toBe('ibm437');
    expect(found(oneByte(text, 0xa1))).toBe('macintosh');
  });

  it('stay UTF-8 where a sample ends inside a character or a few bytes are broken', () => {
    const bytes = utf8(text);
    const cut = bytes.subarray(0, bytes.lastIndexOf(0xc2) + 1);
    expect(detectEncoding(cut, false)).toMatchObject({ encoding: 'utf-8', sure: true });
    const broken = bytes.slice();
    broken[30] = 0xff;
    expect(detectEncoding(broken, true)).toMatchObject({ encoding: 'utf-8', sure: false });
  });

  it('of a single byte are reported with the flag that names another', async () => {
    const { choices } = onlyReport(await readContent(oneByte(text, 0xb0)));
    expect(choices.find(({ about }) => about === 'encoding')).toMatchObject({
      chosen: 'windows-1252',
      override: '--encoding',
    });
  });

  it('can be stated', async () => {
    const bytes = Uint8Array.from(text.replaceAll('°', '\u00b0'), (mark) => mark.charCodeAt(0));
    const readings = await readContent(bytes, { overrides: { encoding: 'iso-8859-5' } });
    expect(readings.columns[0]!.point).toBe('M01 air (АF)');
  });

  it('give the same text in whatever pieces the bytes come', () => {
    for (const [encoding, bytes] of [
      ['utf-16le', utf16(text, true)],
      ['utf-16be', utf16(text, false)],
      ['ibm437', oneByte(text, 0xf8)],
    ] as const) {
      const transcoder = new Transcoder(encoding);
      const pieces: number[] = [];
      for (let at = 0; at < bytes.length; at += 3)
        pieces.push(...transcoder.push(bytes.subarray(at, at + 3)));
      pieces.push(...transcoder.end());
      expect(new TextDecoder().decode(Uint8Array.from(pieces))).toBe(text);
    }
  });

  it('that are mixed keep a degree sign one', () => {
    const mixed = Uint8Array.of(0x41, 0xb0, 0x46);
    expect(textOf(mixed, 0, 3)).toBe('A°F');
    const long = Uint8Array.from([...new Array<number>(60).fill(0x41), 0xb0, 0x46]);
    expect(textOf(long, 0, long.length).slice(-2)).toBe('°F');
  });
});
