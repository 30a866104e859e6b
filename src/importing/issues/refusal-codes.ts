import type { IssueMeaning } from './issue-meaning.ts';

/** Why a whole file or call is refused. */
export const refusalIssues = {
  'no-files': {
    what: 'there is no file to read',
    meaning: 'The folder or archive holds no export.',
    remedy: 'Name a CSV file, a folder, a .gz or a .zip that holds one.',
    effect: 'refusal',
  },
  'file-unopened': {
    what: 'the file cannot be opened',
    meaning: 'It is not there, or may not be read.',
    remedy: 'Check the path and the permissions.',
    effect: 'refusal',
  },
  'archive-damaged': {
    what: 'the archive is damaged',
    meaning: 'The .gz or .zip cannot be unpacked.',
    remedy: 'Download or copy it again.',
    effect: 'refusal',
  },
  'archive-too-large': {
    what: 'the archive unpacks to more than can be an export',
    meaning: 'Archives that unpack to gigabytes are refused, so that none can fill the machine.',
    remedy: 'Unpack it yourself and name the files that you want.',
    effect: 'refusal',
  },
  'file-empty': {
    what: 'the file is empty',
    meaning: 'It holds no bytes, or only blanks.',
    remedy: 'Export again.',
    effect: 'refusal',
  },
  'foreign-file': {
    what: 'the file is something else than a table of text',
    meaning: 'An image, a workbook, a web page … by its first bytes.',
    remedy: 'Export as CSV.',
    effect: 'refusal',
  },
  'unknown-encoding': {
    what: 'the file is binary or text in an unknown encoding',
    meaning: 'It is mostly bytes that no known text encoding has.',
    remedy: 'Save it as CSV in UTF-8.',
    effect: 'refusal',
  },
  'no-table': {
    what: 'no table with a time in each row was found',
    meaning: 'The file is text, but no column holds times.',
    remedy: 'Export with a time column, one row a time or one row a reading.',
    effect: 'refusal',
  },
  'year-missing': {
    what: 'the times have no year, and nothing names it',
    meaning:
      'Stamps such as 09-03 00:05, without a year in a line above the rows or in the name of the file.',
    remedy: 'Give that of the first row with --year, or export with the year.',
    effect: 'refusal',
  },
  'decimal-commas-unclear': {
    what: 'commas separate the cells and stand for decimals too, and which is which cannot be told',
    meaning:
      'The rows have more pieces than the header has names, and they can be joined to numbers in several ways.',
    remedy:
      'Export with semicolons or with decimal points; give --decimal-point if every comma separates cells.',
    effect: 'refusal',
  },
  'no-readings': {
    what: 'the file has a header but no readings',
    meaning: 'The export is empty, perhaps for a time without data.',
    remedy: 'Choose a span that has data and export again.',
    effect: 'refusal',
  },
  'line-too-long': {
    what: 'one line is longer than 64 MB',
    meaning: 'No export has such lines.',
    remedy: 'Check how the file was made.',
    effect: 'refusal',
  },
  'zone-unknown': {
    what: 'the time zone is not known',
    meaning: 'It is not in the IANA time zone database.',
    remedy: 'Give one such as America/Denver or Europe/Berlin.',
    effect: 'refusal',
  },
  'too-many-points': {
    what: 'the file names more points than a site can have',
    meaning: 'More than 100,000 columns or point names: the column taken for names holds something else.',
    remedy: 'Check the columns of the export.',
    effect: 'refusal',
  },
} as const satisfies { readonly [code: string]: IssueMeaning };
