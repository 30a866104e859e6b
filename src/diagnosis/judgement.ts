import type { CauseId, FindingKind, Origin } from '../model/finding.ts';

export interface WeighedCause {
  readonly cause: CauseId;
  readonly likelihood: number;
  /** Features that were weighed: above 0 where they favour this cause, below where they speak against it. */
  readonly leanings?: Readonly<{ [feature: string]: number }>;
}

/** Whose fault it is, by which causes, and how far apart the possible answers are. */
export interface Judgement {
  readonly kind: FindingKind;
  readonly origin: Origin;
  /** Summed likelihood of the causes of that origin, 0 to 1. */
  readonly originLikelihood: number;
  readonly causes: readonly WeighedCause[];
}

/** Below this the origin is named, but the finding says that the data cannot tell. */
export const decidedFrom = 0.75;

export function isDecided(judgement: Judgement): boolean {
  return judgement.originLikelihood >= decidedFrom;
}
