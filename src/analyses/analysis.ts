import type { AnalysisId, Verdict } from '../model/evidence.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../signals/types.ts';

/** One threshold of an analysis. The reference page of settings is generated from these. */
export interface Setting {
  readonly value: number;
  /** UCUM code. */
  readonly unit: string;
  readonly meaning: string;
  /** A citation, `common practice, no source`, or `measured by npm run evaluate`. */
  readonly source: string;
}

export interface AnalysisMeta {
  readonly id: AnalysisId;
  readonly title: string;
  /** What it asks of the log, in words. */
  readonly requires: string;
  /** Shortest history it can judge, in days. */
  readonly minimumDays: number;
  readonly settings: Readonly<{ [name: string]: Setting }>;
}

export interface CircuitAnalysis {
  readonly meta: AnalysisMeta;
  readonly scope: 'circuit';
  /** `group` is the circuit's suction group, null where none is known; `site` is there for peers. */
  analyse(circuit: CircuitSignals, group: GroupSignals | null, site: Signals): Verdict;
}

export interface GroupAnalysis {
  readonly meta: AnalysisMeta;
  readonly scope: 'group';
  analyse(group: GroupSignals, site: Signals): Verdict;
}

export type Analysis = CircuitAnalysis | GroupAnalysis;
