import type { Setting } from '../analysis.ts';

const practice = 'common practice, no source';

export const settings = {
  compressorStarts: {
    value: 10,
    unit: '{starts}/h',
    meaning: 'most starts in an hour that a compressor of unknown kind is allowed',
    source:
      'between the 12 of a scroll (compressor maker’s application guide), the 8 to 10 of a semi-hermetic ' +
      'reciprocating machine (common practice) and the 6 to 8 of a screw (compressor maker’s bulletin)',
  },
  valveStarts: {
    value: 12,
    unit: '{starts}/h',
    meaning: 'most openings of a liquid or suction valve in an hour',
    source: `${practice} (3 to 10 are usual, a period under 4 min is tight)`,
  },
  busyHours: {
    value: 3,
    unit: 'h',
    meaning: 'hours over the limit that make a day count',
    source: practice,
  },
  busyDays: {
    value: 2,
    unit: 'd',
    meaning: 'days that must count within seven',
    source: practice,
  },
  ownNorm: {
    value: 2,
    unit: '1',
    meaning: 'times the machine’s own earlier rate of starts from which a day counts',
    source: practice,
  },
  ownNormStarts: {
    value: 6,
    unit: '{starts}/h',
    meaning: 'least starts an hour, as a mean of the day, before the own norm is held against it',
    source: practice,
  },
  coarseShare: {
    value: 0.35,
    unit: '1',
    meaning:
      'share of the most starts that the logging could show from which a day counts, where it is too coarse',
    source:
      'fast cycles read at random moments show a quarter of the readings as starts: p (1 − p) with p one half',
  },
  singleReadings: {
    value: 0.5,
    unit: '1',
    meaning: 'share of runs seen in one reading only that shows them shorter than the logging',
    source: practice,
  },
  narrowedShare: {
    value: 0.66,
    unit: '1',
    meaning:
      'share of its own earlier swing to which air or suction must narrow to show cycling the logging cannot',
    source: 'measured by npm run evaluate',
  },
  narrowedDays: {
    value: 3,
    unit: 'd',
    meaning: 'days for which it must have stayed so',
    source: practice,
  },
  shortRun: {
    value: 3,
    unit: 'min',
    meaning: 'a run shorter than this is short',
    source: `${practice} (2 min for a scroll, 2 to 5 for a reciprocating machine, 5 for a screw)`,
  },
  tightBand: {
    value: 28,
    unit: 'kPa',
    meaning: 'swing of the suction pressure under which its differential is tight (4 psi)',
    source: `${practice} (bands under 3 to 4 psi)`,
  },
  inStep: {
    value: 0.35,
    unit: '1',
    meaning:
      'mean correlation of the valves of a group within hours, above that of the first third of the days, from which they open in step',
    source: 'measured by npm run evaluate',
  },
  airInStep: {
    value: 0.25,
    unit: '1',
    meaning:
      'where no valves are logged: the same of the air of the circuits, of which modulating valves, which make no strokes, take their share',
    source: 'measured by npm run evaluate',
  },
  inferredCycles: {
    value: 12,
    unit: '{starts}/h',
    meaning: 'cycles of the suction pressure an hour that stand for starts where no run status is logged',
    source: practice,
  },
} as const satisfies { readonly [name: string]: Setting };
