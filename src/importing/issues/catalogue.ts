import type { IssueMeaning } from './issue-meaning.ts';
import { siteIssues } from './site-codes.ts';

const rows = {
  'row-too-short': {
    what: 'the row has fewer cells than the header has columns, so it was left out',
    meaning:
      'A delimiter may be missing in the middle, so no cell of the row can be trusted to stand in its column.',
    remedy: 'Check the row for a missing delimiter; a cut-off last row needs nothing.',
    effect: 'row',
  },
  'row-too-long': {
    what: 'the row has more cells than the header has columns, so it was left out',
    meaning: 'A delimiter too many, perhaps a decimal comma without quotes, shifts the values behind it.',
    remedy: 'Check the row for an unquoted delimiter inside a value.',
    effect: 'row',
  },
  'row-not-data': {
    what: 'the row is no reading (a title, footer, total or remark), so it was left out',
    meaning: 'The row carries text where the other rows carry a time.',
    remedy: 'Nothing to do unless readings are missing there.',
    effect: 'row',
  },
  'row-repeated': {
    what: 'readings that were there already with the same time and values were left out',
    meaning: 'The same reading was met twice, in one file or in two that overlap. One copy is kept.',
    remedy: 'Nothing to do.',
    effect: 'row',
  },
  'row-in-conflict': {
    what: 'two rows carry the same time with different values; the later row was kept',
    meaning: 'Only one value can be true at one time; the one further down in the export counts.',
    remedy: 'If the clock was set back, say so to whoever reads the findings near that time.',
    effect: 'row',
  },
  'time-missing': {
    what: 'the row has values but no time, so it was left out',
    meaning: 'Without a time a reading cannot be placed.',
    remedy: 'Fill in the time if it is known.',
    effect: 'row',
  },
  'time-unreadable': {
    what: 'the time cannot be read or does not exist, so the row was left out',
    meaning:
      'The cell is no time stamp in the form that the rest of the column has, or names a date or hour that does not exist.',
    remedy:
      'Correct the cell, or give --day-first or --month-first if day and month were taken the wrong way round.',
    effect: 'row',
  },
  'time-implausible': {
    what: 'the time lies far away from all others (a clock that was reset), so the row was left out',
    meaning:
      'A logger that lost its clock writes its start date until the clock is set again; the readings cannot be placed.',
    remedy: 'Set the logger’s clock; its battery may be empty.',
    effect: 'row',
  },
} as const satisfies { readonly [code: string]: IssueMeaning };

const values = {
  'missing-word': {
    what: 'a word for “no reading” stands in place of a value',
    meaning: 'The export says that there is no reading (n/a, ---, null). It is missing, never 0.',
    remedy: 'Nothing to do unless it is often.',
    effect: 'value',
  },
  'fault-word': {
    what: 'a word for a fault stands in place of a value',
    meaning:
      'The controller says that the probe or the line to it failed (Fail, Short, Comm loss). The reading is missing, never 0.',
    remedy: 'Check the probe and its wiring if it is often.',
    effect: 'value',
  },
  'state-word-in-number-column': {
    what: 'a state stands in place of a number',
    meaning:
      'A word such as Off or Def in a column of numbers says what the circuit was doing, not what it read. The reading is missing, never 0.',
    remedy: 'Nothing to do; export the state as a column of its own if you can.',
    effect: 'value',
  },
  'number-in-state-column': {
    what: 'a number other than 0 and 1 stands in a column of states',
    meaning: 'The column holds states such as ON and OFF; another number says none of them.',
    remedy: 'Check what the column logs.',
    effect: 'value',
  },
  'value-unreadable': {
    what: 'the cell is neither a number nor a word known here, so it gave no reading',
    meaning: 'The cell could not be understood. It was not guessed.',
    remedy: 'Correct the cell, or tell us the word.',
    effect: 'value',
  },
  'column-of-text': {
    what: 'the column holds text, no readings',
    meaning: 'Remarks, names or modes that are not on/off. The column is left out whole.',
    remedy: 'Nothing to do unless it should hold readings.',
    effect: 'value',
  },
  'value-overflow': {
    what: 'the number is too large to be one',
    meaning: 'The number lies beyond what a number can hold.',
    remedy: 'Check how the export was made.',
    effect: 'value',
  },
  'quality-bad': {
    what: 'the export itself marks the value as bad',
    meaning: 'The quality column says that the value must not be used.',
    remedy: 'Check the point in the controller if it is often.',
    effect: 'value',
  },
  'probe-rail': {
    what: 'a constant at the end of the scale was taken for a broken or missing probe',
    meaning:
      'The same extreme value, entered and left in one step, is what an open or shorted probe or an error code reads. The readings are missing.',
    remedy: 'Check the probe and its wiring. If the value is real, give --keep-rails.',
    effect: 'value',
  },
  'not-connected': {
    what: 'the channel reads one impossible value throughout, as nothing is connected to it',
    meaning: 'Every reading of the column is an error code or lies at the end of the scale.',
    remedy: 'Nothing to do if the channel is spare. If the value is real, give --keep-rails.',
    effect: 'value',
  },
  'unit-changed': {
    what: 'the unit of the column changes within the export; later readings were converted to the first unit',
    meaning: 'The export names another unit from here on. Both units are stated, so the conversion is exact.',
    remedy: 'Nothing to do; give --unit-change reject to leave the later readings out instead.',
    effect: 'note',
  },
  'unit-changed-left-out': {
    what: 'the unit of the column changes within the export; the later readings were left out',
    meaning:
      'The export names a unit from here on that cannot be converted to the first one, or the options say so.',
    remedy: 'Export the stretches apart; give --unit-change keep to take the numbers as written.',
    effect: 'value',
  },
  'unit-change-suspected': {
    what: 'from here on the readings fit the other temperature scale (°F and °C), and nothing says so; they were left out',
    meaning:
      'The level jumps as F = 1.8 C + 32 would have it. Which scale is meant is not written, so the readings after the change are not used.',
    remedy: 'Give --unit-change convert to convert them, or --unit-change keep if the jump is real.',
    effect: 'value',
  },
} as const satisfies { readonly [code: string]: IssueMeaning };

const notes = {
  'encoding-mixed': {
    what: 'bytes that are not valid in the file’s encoding were read as Windows-1252',
    meaning: 'Part of the file was written in another encoding. Numbers and times are not touched by this.',
    remedy: 'Check the names of the columns.',
    effect: 'note',
  },
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
  'unit-unlabelled': {
    what: 'the column carries no unit although its neighbours do',
    meaning: 'Its numbers are kept as written; which unit they are in is decided by the site file.',
    remedy: 'State the unit in the site file.',
    effect: 'note',
  },
  'decimal-marks-mixed': {
    what: 'some numbers are written with the other decimal mark',
    meaning: 'The number cannot be read another way (3,4 or 3.4), so it was taken.',
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

const refusals = {
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

/** Every code that an import report or a refusal can carry. */
export const issueCatalogue = { ...rows, ...values, ...notes, ...siteIssues, ...refusals } as const;

export type IssueCode = keyof typeof issueCatalogue;
