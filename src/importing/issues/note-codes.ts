import type { IssueMeaning } from './issue-meaning.ts';

/** What was odd, with nothing left out. */
export const noteIssues = {
  'bytes-left-out': {
    what: 'NUL bytes or other marks that show nothing were left out',
    meaning: 'The file went through a program that added them. Readings are not touched by this.',
    remedy: 'Nothing to do.',
    effect: 'note',
  },
  'quote-unclosed': {
    what: 'a quotation mark is opened and never closed; the line was read without it',
    meaning: 'Read as written, the rest of the file would be one cell.',
    remedy: 'Check the line.',
    effect: 'note',
  },
  preamble: {
    what: 'lines before the table were passed over',
    meaning: 'Titles and remarks above the header.',
    remedy: 'Nothing to do.',
    effect: 'note',
  },
  'header-repeated': {
    what: 'the header is repeated inside the table',
    meaning: 'Exports that were joined or paged repeat it.',
    remedy: 'Nothing to do.',
    effect: 'note',
  },
  'header-missing': {
    what: 'the table has no header; the columns were numbered',
    meaning: 'Points are named “column 2”, “column 3” and so on.',
    remedy: 'Name them in a site file.',
    effect: 'note',
  },
  'second-table': {
    what: 'a second table with other columns begins here and was read as well',
    meaning: 'The file holds several tables one below the other.',
    remedy: 'Nothing to do.',
    effect: 'note',
  },
  'name-empty': {
    what: 'the column has no name and was numbered',
    meaning: 'The header cell is empty or shows nothing.',
    remedy: 'Name it in the export or use the number in the site file.',
    effect: 'note',
  },
  'name-repeated': {
    what: 'two columns have the same name; the second was numbered',
    meaning: 'A point must have a name of its own: “Air”, “Air (2)”.',
    remedy: 'Use the numbered name in the site file.',
    effect: 'note',
  },
  'rows-out-of-order': {
    what: 'rows stand out of time order and were put into it',
    meaning: 'The readings are complete; only their order in the file was different.',
    remedy: 'Nothing to do.',
    effect: 'note',
  },
  'clock-set-back': {
    what: 'the clock goes back here and runs on',
    meaning:
      'The logger’s clock was corrected. Readings of the stretch that comes twice are kept once, the later row counting.',
    remedy: 'Mind it when times near here matter.',
    effect: 'note',
  },
  'repeated-hour': {
    what: 'clocks were put back; the hour that comes twice was told apart by the order of the rows',
    meaning: 'The local time in the export is ambiguous for one hour in autumn.',
    remedy: 'Nothing to do; an export with UTC offsets avoids it.',
    effect: 'note',
  },
  'repeated-hour-once': {
    what: 'clocks were put back, but the hour that should come twice is there once; it was read as the first',
    meaning: 'Either readings are missing or the logger’s clock does not follow summer time.',
    remedy: 'If the logger keeps standard time all year, give that zone with --time-zone.',
    effect: 'note',
  },
  'skipped-hour': {
    what: 'times in the hour that clocks skip in spring were read as if they had not been put forward',
    meaning: 'The logger’s clock was not put forward at once, or does not follow summer time.',
    remedy: 'If the logger keeps standard time all year, give that zone with --time-zone.',
    effect: 'note',
  },
  'counted-days-among-stamps': {
    what: 'times written as a spreadsheet’s count of days stand among written stamps, and were read',
    meaning:
      'A spreadsheet turned the stamps that it understood into days since 1899-12-30 and left the others as text.',
    remedy:
      'Mind that such a spreadsheet may have changed other cells too; the export as the controller wrote it is safer.',
    effect: 'note',
  },
  gap: {
    what: 'there are no readings for much longer than usual',
    meaning: 'The logger or the line was off, or the export leaves out the stretch.',
    remedy: 'Export the stretch again if it exists.',
    effect: 'note',
  },
  'interval-changes': {
    what: 'the time between readings changes',
    meaning: 'The logging interval was changed, or exports of different intervals were joined.',
    remedy: 'Nothing to do.',
    effect: 'note',
  },
  'never-changes': {
    what: 'the value never changes',
    meaning: 'A spare channel, a stuck probe or a fixed set point. The readings are kept.',
    remedy: 'Check the channel if it should move.',
    effect: 'note',
  },
  'unit-part': {
    what: 'the name gives tenths or hundredths of a unit, and the numbers are whole; they were divided',
    meaning: 'A column such as “°C x10” holds 35 for 3.5 °C.',
    remedy: 'Nothing to do.',
    effect: 'note',
  },
  'unit-not-converted': {
    what: 'the name gives a unit that is not converted; the numbers were read as they stand, without a unit',
    meaning:
      'Inches of mercury, of water and their kind, and tenths of a degree that have decimals of their own. Without a unit, a pressure would be taken for one in the site’s unit.',
    remedy: 'Export in psi, bar or kPa, in °F or °C, or leave the point out of the site file.',
    effect: 'note',
  },
  'decimal-marks-mixed': {
    what: 'some numbers are written with the other decimal mark',
    meaning: 'The number cannot be read another way (3,4 or 3.4), so it was taken.',
    remedy: 'Nothing to do.',
    effect: 'note',
  },
  'value-marked': {
    what: 'a mark stands behind the number, which was read',
    meaning:
      'Loggers put a star, an H or L for an alarm, or a quality in braces behind a number. The number counts.',
    remedy: 'Nothing to do.',
    effect: 'note',
  },
  'file-without-readings': {
    what: 'no reading was found in this file',
    meaning: 'One of several files holds no table with times and values.',
    remedy: 'Check that the right file was exported.',
    effect: 'note',
  },
} as const satisfies { readonly [code: string]: IssueMeaning };
