import type { FaultName, LookAlikeName } from './fault-catalogue.ts';

/** What a circuit must be like, where the request minds. */
export interface CircuitWishes {
  readonly sections?: number;
  readonly controls?: 'average' | 'warmest' | number;
  readonly valve?: 'on-off' | 'modulating';
  readonly defrostKind?: 'off-cycle' | 'electric' | 'hot-gas';
}

export interface FaultRequest {
  readonly fault: FaultName;
  readonly strength?: 'full' | 'mild';
  /** Circuit or, for faults of a group, suction group; drawn when not given. */
  readonly on?: string;
  /** Place of the section or probe; drawn when not given. */
  readonly place?: number;
  /** Days after the start of the log; drawn when not given. */
  readonly onsetDay?: number;
  /** Size in °F of a fault that warms something; drawn from its strength when not given. */
  readonly size?: number;
  /** Days that a creeping fault takes from nothing to its size; drawn when not given. */
  readonly overDays?: number;
  /** How a creeping fault goes: as (share of its time) to this power. 1 when not given: as its kind goes; less slows down, more gathers. */
  readonly bend?: number;
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
  /** Whether the suction set points float with the load; they stand still when not given. */
  readonly floating?: boolean;
  readonly lowCircuits?: number;
  /** What the first medium-temperature circuit, `M01`, must be like. */
  readonly first?: CircuitWishes;
  readonly faults?: readonly FaultRequest[];
  readonly lookAlikes?: readonly LookAlikeName[];
  /** Day on which look-alikes that begin at some time do begin; drawn for each when not given. */
  readonly lookAlikeDay?: number;
}
