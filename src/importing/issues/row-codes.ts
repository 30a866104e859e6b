import type { IssueMeaning } from './issue-meaning.ts';

/** Why a whole row was left out. */
export const rowIssues = {
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
  'row-of-skipped-hour': {
    what: 'rows in the hour that clocks skip in spring were left out, since the time they were moved to has its own row',
    meaning: 'The hour does not exist in this zone; read as not yet put forward it falls on the next hour.',
    remedy: 'If the logger keeps standard time all year, give that zone with --time-zone.',
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
