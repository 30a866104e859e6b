import { ImportRefusal } from '../readings.ts';

interface Signature {
  readonly bytes: readonly number[];
  readonly at?: number;
  readonly what: string;
  readonly advice: string;
}

const ask = 'Ask the controller for a CSV export';

/** First bytes of files that people rename to .csv by mistake; from the formats' specifications, from memory. */
const signatures: readonly Signature[] = [
  { bytes: [0x89, 0x50, 0x4e, 0x47], what: 'a PNG image', advice: ask },
  { bytes: [0xff, 0xd8, 0xff], what: 'a JPEG image', advice: ask },
  { bytes: [0x47, 0x49, 0x46, 0x38], what: 'a GIF image', advice: ask },
  { bytes: [0x42, 0x4d], what: 'a BMP image', advice: ask },
  { bytes: [0x49, 0x49, 0x2a, 0x00], what: 'a TIFF image', advice: ask },
  { bytes: [0x4d, 0x4d, 0x00, 0x2a], what: 'a TIFF image', advice: ask },
  {
    bytes: [0x25, 0x50, 0x44, 0x46],
    what: 'a PDF document',
    advice: `${ask}; a printed report cannot be read`,
  },
  {
    bytes: [0x50, 0x4b, 0x03, 0x04],
    what: 'a ZIP archive or a spreadsheet workbook (.xlsx)',
    advice: 'Save the sheet as CSV, or name the archive .zip',
  },
  {
    bytes: [0xd0, 0xcf, 0x11, 0xe0],
    what: 'an old spreadsheet workbook (.xls)',
    advice: 'Open it and save the sheet as CSV',
  },
  { bytes: [0x1f, 0x8b], what: 'a gzip archive inside another', advice: 'Unpack it once more' },
  { bytes: [0x42, 0x5a, 0x68], what: 'a bzip2 archive', advice: 'Unpack it first' },
  { bytes: [0xfd, 0x37, 0x7a, 0x58, 0x5a], what: 'an xz archive', advice: 'Unpack it first' },
  { bytes: [0x28, 0xb5, 0x2f, 0xfd], what: 'a zstd archive', advice: 'Unpack it first' },
  { bytes: [0x37, 0x7a, 0xbc, 0xaf], what: 'a 7-Zip archive', advice: 'Unpack it first' },
  { bytes: [0x52, 0x61, 0x72, 0x21], what: 'a RAR archive', advice: 'Unpack it first' },
  { bytes: [0x53, 0x51, 0x4c, 0x69, 0x74, 0x65], what: 'an SQLite database', advice: ask },
  { bytes: [0x50, 0x41, 0x52, 0x31], what: 'a Parquet file', advice: 'Save it as CSV' },
  { bytes: [0x7f, 0x45, 0x4c, 0x46], what: 'a program', advice: ask },
  { bytes: [0x4d, 0x5a], what: 'a Windows program', advice: ask },
  { bytes: [0x52, 0x49, 0x46, 0x46], what: 'a sound or video file', advice: ask },
  { bytes: [0x75, 0x73, 0x74, 0x61, 0x72], at: 257, what: 'a tar archive', advice: 'Unpack it first' },
  { bytes: [0x89, 0x48, 0x44, 0x46], what: 'an HDF5 file', advice: 'Save its table as CSV' },
  { bytes: [0x43, 0x44, 0x46, 0x01], what: 'a NetCDF file', advice: 'Save its table as CSV' },
  {
    bytes: [0x4d, 0x41, 0x54, 0x4c, 0x41, 0x42],
    what: 'a MATLAB file (.mat)',
    advice: 'Save its table as CSV',
  },
  { bytes: [0x54, 0x44, 0x53, 0x6d], what: 'a TDMS measurement file', advice: 'Save its table as CSV' },
  { bytes: [0x04, 0x22, 0x4d, 0x18], what: 'an LZ4 archive', advice: 'Unpack it first' },
  { bytes: [0x4d, 0x53, 0x43, 0x46], what: 'a cabinet archive (.cab)', advice: 'Unpack it first' },
  {
    bytes: [0x53, 0x74, 0x61, 0x6e, 0x64, 0x61, 0x72, 0x64, 0x20],
    at: 4,
    what: 'an Access database (.mdb or .accdb)',
    advice: 'Open it and save the table as CSV',
  },
  {
    bytes: [0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00],
    what: 'a file whose first bytes are all zero, as an interrupted download or copy leaves it',
    advice: 'Download or copy it again',
  },
];

function refuse(name: string, code: string, what: string, advice: string): never {
  throw new ImportRefusal(code, `${name}: this is ${what}, not a CSV export. ${advice}.`);
}

/** Throws ImportRefusal where the first bytes are those of something that is no table of text. */
export function refuseForeignFile(name: string, sample: Uint8Array): void {
  for (const { bytes, at = 0, what, advice } of signatures) {
    if (!bytes.every((byte, index) => sample[at + index] === byte)) continue;
    const textual = bytes.length < 4 && at === 0 && controlShare(sample) < 0.02;
    if (!textual) refuse(name, 'foreign-file', what, advice);
  }
  const start = beginning(sample);
  if (/^(?:<!doctype html|<html|<head|<body|<script|<table|<\?php)/iu.test(start)) {
    refuse(
      name,
      'foreign-file',
      'a web page (HTML), perhaps an error or login page',
      'Open it in a browser to see what it says, then export again',
    );
  }
  if (/^<\?xml|^<[a-z][\w:-]*[ >/]/iu.test(start))
    refuse(name, 'foreign-file', 'an XML document', 'Export as CSV instead');
  if (/^\{\\rtf/u.test(start)) refuse(name, 'foreign-file', 'a rich text document', 'Save it as plain CSV');
  if (/^%!PS/u.test(start)) refuse(name, 'foreign-file', 'a PostScript document', ask);
  if (/^[[{]\s*(?:[{["\]}]|-?\d)/u.test(start))
    refuse(name, 'foreign-file', 'a JSON document', 'Export as CSV instead');
  if (/^From: |^(?:Return-Path|Received|MIME-Version|Delivered-To): /u.test(start)) {
    refuse(name, 'foreign-file', 'an e-mail message', 'Save the attached export and use that');
  }
}

function beginning(sample: Uint8Array): string {
  return new TextDecoder('latin1')
    .decode(sample.subarray(0, 512))
    .replace(/^(?:\u00ef\u00bb\u00bf)?\s*/u, '');
}

/** Share of control bytes that no text has (other than NUL, tab, line ends and form feed). */
export function controlShare(sample: Uint8Array): number {
  let controls = 0;
  const length = Math.min(sample.length, 65_536);
  for (let at = 0; at < length; at++) {
    const byte = sample[at]!;
    if ((byte > 0 && byte < 9) || byte === 11 || (byte > 13 && byte < 32) || byte === 127) controls++;
  }
  return length === 0 ? 0 : controls / length;
}

/** Throws where text that was found to be no 16-bit encoding is mostly control or NUL bytes. */
export function refuseBinary(name: string, sample: Uint8Array): void {
  let nul = 0;
  const length = Math.min(sample.length, 65_536);
  for (let at = 0; at < length; at++) if (sample[at] === 0) nul++;
  if (controlShare(sample) > 0.05 || nul > 0.4 * length) {
    refuse(
      name,
      'unknown-encoding',
      'binary data or text in an encoding that is not known here',
      'Save it as CSV in UTF-8',
    );
  }
  if (ebcdicShare(sample) > 0.6)
    refuse(name, 'unknown-encoding', 'text in EBCDIC', 'Save it as CSV in UTF-8');
}

/** EBCDIC digits and blanks (F0 to F9, 40, 4B, 6B) make up most of a table of numbers. */
function ebcdicShare(sample: Uint8Array): number {
  const length = Math.min(sample.length, 65_536);
  let hits = 0;
  let digits = 0;
  for (let at = 0; at < length; at++) {
    const byte = sample[at]!;
    if (byte >= 0xf0 && byte <= 0xf9) digits++;
    if (
      (byte >= 0xf0 && byte <= 0xf9) ||
      byte === 0x40 ||
      byte === 0x4b ||
      byte === 0x6b ||
      byte === 0x15 ||
      byte === 0x25
    )
      hits++;
  }
  return length > 16 && digits > length / 4 ? hits / length : 0;
}
