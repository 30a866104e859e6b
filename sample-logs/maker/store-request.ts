import type { CircuitWishes } from './section-model/draw-circuit.ts';

/** The faults that a simulator can plant. */
export const faultNames = ['iced-end', 'probe-step', 'probe-creep', 'suction-rise'] as const;
export type FaultName = (typeof faultNames)[number];

export const lookAlikeNames = ['set-point-change'] as const;
export type LookAlikeName = (typeof lookAlikeNames)[number];

export interface FaultRequest {
  readonly fault: FaultName;
  readonly strength?: 'full' | 'mild';
  /** Circuit id; drawn when not given. */
  readonly circuit?: string;
  /** Place of the section or probe; drawn when not given. */
  readonly place?: number;
  /** Days after the start of the log; drawn when not given. */
  readonly onsetDay?: number;
  readonly size?: number;
}

/** One store-month to be simulated. */
export interface StoreRequest {
  readonly seed: number;
  /** 30 when not given. */
  readonly days?: number;
  /** Local date on which the log starts. */
  readonly startDate?: string;
  readonly site?: string;
  readonly timeZone?: string;
  readonly mediumCircuits?: number;
  readonly lowCircuits?: number;
  /** What the first medium-temperature circuit, `M01`, must be like. */
  readonly first?: CircuitWishes;
  readonly faults?: readonly FaultRequest[];
  readonly lookAlikes?: readonly LookAlikeName[];
}
