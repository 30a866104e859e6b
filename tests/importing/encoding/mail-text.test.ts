import { describe, expect, it } from 'vitest';
import { isoTime, plainRows, written } from '../damaged/plain-log.ts';
import { bytesOf, memorySource, normalized, normalizedContent, onlyReport, readSources } from '../support.ts';

const longRows = plainRows().map((row) => ({ ...row, cells: [...row.cells, ...row.cells] }));
const quotedPrintable = (text: string): string =>
  text
    .replaceAll('=', '=3D')
    .replaceAll('°', '=C2=B0')
    .split('\n')
    .map((line) => line.replace(/.{70}(?=.)/gu, '$&=\r\n'))
    .join('\r\n');
const cutAt = (text: string, width: number, lineEnd: string): string =>
  text
    .trimEnd()
    .split('\n')
    .flatMap((line) => line.match(new RegExp(`.{1,${width}}`, 'gu'))!)
    .map((line) => line + lineEnd)
    .join('');

describe('what mail did to a text is undone, and the report says so', () => {
  const cases = [
    { name: 'quoted-printable', content: quotedPrintable(written()), expected: written() },
    { name: 'rows cut at 50 characters', content: cutAt(written(), 50, '\n'), expected: written() },
    { name: 'rows cut at 50 characters, CRLF', content: cutAt(written(), 50, '\r\n'), expected: written() },
    {
      name: 'rows cut at 76 characters',
      content: cutAt(
        written({ headers: Array.from({ length: 14 }, (_, at) => `P${at} air`) }, longRows),
        76,
        '\n',
      ),
      expected: written({ headers: Array.from({ length: 14 }, (_, at) => `P${at} air`) }, longRows),
    },
  ];

  it.each(cases)('$name', async ({ content, expected }) => {
    for (const chunkLength of [999, 65_536, 10_000_000]) {
      const readings = await readSources([memorySource('export.csv', content, chunkLength)]);
      expect(normalized(readings) === (await normalizedContent(expected))).toBe(true);
      expect(onlyReport(readings).choices.map(({ about }) => about)).toContain('text that came by mail');
    }
  });

  it('leaves rows of one length alone', async () => {
    const rows = plainRows().map(({ wallMs }, at) => `${isoTime(wallMs)},${(10 + (at % 80)).toFixed(20)},ON`);
    const readings = await readSources([memorySource('export.csv', ['Time,A,B', ...rows].join('\n'))]);
    expect(onlyReport(readings)).toMatchObject({ rows: 864, choices: [] });
  });
});

describe('UTF-32', () => {
  const inFour = (text: string, isLittle: boolean): Uint8Array => {
    const view = new DataView(new ArrayBuffer(4 * text.length));
    for (let at = 0; at < text.length; at++) view.setUint32(4 * at, text.charCodeAt(at), isLittle);
    return new Uint8Array(view.buffer);
  };

  it.each([
    { name: 'little end first, with a mark', isLittle: true, mark: '\ufeff' },
    { name: 'big end first, with a mark', isLittle: false, mark: '\ufeff' },
    { name: 'little end first', isLittle: true, mark: '' },
    { name: 'big end first', isLittle: false, mark: '' },
  ])('is read: $name', async ({ isLittle, mark }) => {
    for (const chunkLength of [4097, 300_001, 10_000_000]) {
      const source = memorySource('export.csv', inFour(mark + written(), isLittle), chunkLength);
      expect(normalized(await readSources([source])) === (await normalizedContent(written()))).toBe(true);
    }
  });
});

describe('a degree sign of two bytes', () => {
  it.each([
    ['gb18030', 0xa1, 0xe3],
    ['shift_jis', 0x81, 0x8b],
    ['euc-kr', 0xa1, 0xc6],
    ['euc-jp', 0xa1, 0xeb],
  ])('of %s stays one', async (encoding, first, second) => {
    const bytes = [...written()].flatMap((letter) =>
      letter === '°' ? [first, second] : [...bytesOf(letter)],
    );
    const readings = await readSources([memorySource('export.csv', Uint8Array.from(bytes))]);
    expect(normalized(readings) === (await normalizedContent(written()))).toBe(true);
    expect(onlyReport(readings).choices.map(({ chosen }) => chosen)).toContain(encoding);
  });
});
