import type { EpochMs } from '../units/quantities.ts';
import type { Abstention, Evidence, Measure } from './evidence.ts';

export const findingKinds = [
  'upward-drift',
  'probe-disagreement',
  'short-cycling',
  'defrost-recovery',
  'defrost-missed',
  'rack-pressure',
  'superheat',
  'left-off',
  'record-quality',
] as const;
export type FindingKind = (typeof findingKinds)[number];

/** `note`: worth knowing, no visit. `watch`: look at it on the next visit. `act`: it will reach its limit, or has. */
export const severities = ['note', 'watch', 'act'] as const;
export type Severity = (typeof severities)[number];

/** The judgement that decides who drives where. */
export const origins = ['case', 'probe', 'defrost', 'control', 'rack', 'record'] as const;
export type Origin = (typeof origins)[number];

export const causes = [
  'airflow-or-ice',
  'evaporator-fan',
  'underfeeding',
  'overfeeding',
  'door-or-load',
  'probe-offset',
  'probe-drift',
  'probe-noise',
  'probe-stuck',
  'probe-open-or-short',
  'probe-moved',
  'probe-swapped',
  'defrost-schedule',
  'defrost-heat',
  'defrost-termination',
  'drain',
  'tight-differential',
  'circuits-in-step',
  'compressor-control',
  'low-charge',
  'capacity-shortfall',
  'condensing',
  'set-point',
  'left-off',
  'service-visit',
  'weather',
  'normal-variation',
  'logging',
] as const;
export type CauseId = (typeof causes)[number];

export interface RankedCause {
  readonly cause: CauseId;
  /** 0 to 1; the causes of one finding sum to at most 1. */
  readonly likelihood: number;
  readonly because: string;
  readonly checkFirst: readonly string[];
  readonly bring: readonly string[];
}

/** When a creeping value reaches its limit, judged at the end of the span. */
export interface Projection {
  readonly limit: number;
  readonly at: EpochMs | null;
  readonly earliest: EpochMs | null;
  /** Null beside a date: it may well never get there. */
  readonly latest: EpochMs | null;
  /** Why there is no date, where there is none. */
  readonly reason: string | null;
  /** Whose limit it is: the alarm in force, cold holding of food (held against air), or a margin over the set point. */
  readonly limitSource?: 'site' | 'food' | 'set-point';
  /** Where the settled air stands at the end of the export, Celsius. */
  readonly levelNow?: number;
}

export interface Finding {
  /** Stable: the same data gives the same id. */
  readonly id: string;
  readonly kind: FindingKind;
  readonly severity: Severity;
  readonly circuit: string | null;
  readonly suctionGroup: string | null;
  readonly probe: string | null;
  readonly points: readonly string[];
  readonly origin: Origin;
  readonly onset: EpochMs;
  readonly end: EpochMs | null;
  readonly confidence: number;
  /** One sentence a technician can act on, in the site's units. */
  readonly summary: string;
  readonly measures: readonly Measure[];
  readonly causes: readonly RankedCause[];
  readonly projection: Projection | null;
  /** Look-alikes that were considered, each with why it is not that one. */
  readonly notThis: readonly string[];
  /** The one measurement or observation that would change the verdict, or null. */
  readonly wouldDecide: string | null;
  /** Circuits whose own flags this finding stands for (a rack fault), else empty. */
  readonly covers: readonly string[];
  readonly evidence: readonly Evidence[];
}

export interface RankedCircuit {
  readonly id: string;
  readonly name: string;
  /** 1 is the worst. */
  readonly rank: number;
  readonly worst: Severity | null;
}

/** What is said of a site, ready to be shown. */
export interface Diagnosis {
  /** Worst first. */
  readonly findings: readonly Finding[];
  readonly circuits: readonly RankedCircuit[];
  readonly abstentions: readonly Abstention[];
}
