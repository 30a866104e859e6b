/** One thing that is followed through a history, block by block of the clock. */
export interface Figure {
  readonly id: FigureId;
  /** The one point it belongs to, or null for a circuit or group as a whole. */
  readonly point: string | null;
  /** UCUM code, as in a `Measure`. */
  readonly unit: 'Cel' | 'K' | 'min' | '1' | '{starts}/h' | 'kPa';
  /** One value a clock block (`clockBlocks`), NaN where too little is known. */
  readonly values: Float64Array;
}

export const figureIds = [
  'level',
  'air',
  'offset',
  'spread',
  'swing',
  'recovery',
  'duty',
  'valve-starts',
  'superheat',
  'suction',
  'discharge',
  'liquid-level',
] as const;
export type FigureId = (typeof figureIds)[number];

export interface FigureMeaning {
  readonly title: string;
  /** What it is and how it is computed; stands in the reference. */
  readonly definition: string;
  /** A change below this is of no account to anybody, whatever its interval; in the figure's unit. */
  readonly worthSaying: number;
}

/** Smallest changes worth saying: common practice, no source, unless a test says otherwise. */
export const figureMeanings: Readonly<Record<FigureId, FigureMeaning>> = {
  level: {
    title: 'level over set point',
    definition: 'median in settled air of (mean of the usable probes − set point)',
    worthSaying: 0.6,
  },
  air: { title: 'level', definition: 'median of settled air at the probe', worthSaying: 0.8 },
  offset: {
    title: 'against the other probes',
    definition: 'median in settled air of (probe − median of the other usable probes)',
    worthSaying: 0.8,
  },
  spread: {
    title: 'spread between probes',
    definition: 'median in settled air of (warmest − coldest usable probe)',
    worthSaying: 0.8,
  },
  swing: {
    title: 'swing of a cycle',
    definition: 'p90 − p10 of the mean of the usable probes in settled air',
    worthSaying: 0.6,
  },
  recovery: {
    title: 'recovery after defrost',
    definition:
      'median over the usable probes of the minutes until the air was back; the minutes watched where it was not',
    worthSaying: 8,
  },
  duty: {
    title: 'valve open',
    definition: 'share of settled time with the valve feeding',
    worthSaying: 0.06,
  },
  'valve-starts': {
    title: 'valve openings an hour',
    definition: 'changes from shut to open in settled air ÷ hours of settled air with the valve known',
    worthSaying: 1,
  },
  superheat: {
    title: 'superheat',
    definition: 'median in settled air of the superheat while the valve feeds',
    worthSaying: 2,
  },
  suction: { title: 'suction pressure', definition: 'median', worthSaying: 10 },
  discharge: { title: 'discharge pressure', definition: 'median', worthSaying: 50 },
  'liquid-level': { title: 'liquid level', definition: 'median', worthSaying: 0.05 },
};
