import type { IssueMeaning } from './issue-meaning.ts';

/** Why a value was left out or changed its unit. */
export const valueIssues = {
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
