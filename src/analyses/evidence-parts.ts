import type { Abstention, AnalysisId, Measure } from '../model/evidence.ts';

/** A measure whose interval is not known; `unit` is a UCUM code. */
export function measure(name: string, value: number, unit: string): Measure {
  return { name, value, low: null, high: null, unit };
}

/** What could be measured; what could not is left out. */
export function knownMeasures(measures: readonly Measure[]): Measure[] {
  return measures.filter((one) => Number.isFinite(one.value));
}

export function knownFeatures(features: { readonly [name: string]: number }): { [name: string]: number } {
  return Object.fromEntries(Object.entries(features).filter(([, value]) => Number.isFinite(value)));
}

export interface Subject {
  readonly circuit: string | null;
  readonly suctionGroup: string | null;
}

export function abstention(
  analysis: AnalysisId,
  subject: Subject,
  reason: string,
  needs: string | null,
): Abstention {
  return { analysis, circuit: subject.circuit, suctionGroup: subject.suctionGroup, reason, needs };
}

export const circuitSubject = (circuit: {
  readonly id: string;
  readonly suctionGroup: string | null;
}): Subject => ({
  circuit: circuit.id,
  suctionGroup: circuit.suctionGroup,
});

export const groupSubject = (group: { readonly id: string }): Subject => ({
  circuit: null,
  suctionGroup: group.id,
});

export function held(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
