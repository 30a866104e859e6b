import type { EpochMs } from '../units/quantities.ts';
import type { FindingKind, Projection } from './finding.ts';

/** A number that an analysis measured, in inside units, with its interval where one is known. */
export interface Measure {
  readonly name: string;
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
  /** UCUM code: `K`, `K/d`, `Cel`, `kPa`, `min`, `h`, `d`, `%`, `1`, `{starts}/h` … */
  readonly unit: string;
}

/**
 * What one analysis saw on one circuit or suction group. It says what the data shows, not yet whose fault it
 * is: attribution, severity and causes are the diagnosis's.
 */
export interface Evidence {
  readonly analysis: AnalysisId;
  readonly kind: FindingKind;
  readonly circuit: string | null;
  readonly suctionGroup: string | null;
  /** The one point it is about, or null. */
  readonly probe: string | null;
  /** All points that it rests on. */
  readonly points: readonly string[];
  readonly onset: EpochMs;
  /** null: still so at the end of the span. */
  readonly end: EpochMs | null;
  /** 0 to 1: how sure the analysis is that what it describes is there at all. */
  readonly certainty: number;
  readonly measures: readonly Measure[];
  /** Named features for the diagnosis (`defrostOffsetRatio`, `swingRatio`, `missedShare` …), finite numbers. */
  readonly features: Readonly<{ [name: string]: number }>;
  /** The shape of what was seen, a word of the analysis (`step`, `creep`, `stuck` …). */
  readonly shape: string;
  /** When what creeps reaches its limit; left out or null where nothing is projected. */
  readonly projection?: Projection | null;
}

/** What an analysis could not judge, and why. */
export interface Abstention {
  readonly analysis: AnalysisId;
  readonly circuit: string | null;
  readonly suctionGroup: string | null;
  /** A sentence: what cannot be seen, and why. */
  readonly reason: string;
  /** The column or the length of history that would allow it, or null. */
  readonly needs: string | null;
}

export type AnalysisId =
  | 'upward-drift'
  | 'probe-disagreement'
  | 'short-cycling'
  | 'defrost-recovery'
  | 'rack-pressure'
  | 'superheat'
  | 'left-off'
  | 'record-quality';

export interface Verdict {
  readonly evidence: readonly Evidence[];
  readonly abstentions: readonly Abstention[];
}
