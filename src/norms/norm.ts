import type { DayType } from '../figures/clock-blocks.ts';
import type { Figure } from '../figures/figure.ts';
import type { EpochMs } from '../units/quantities.ts';

/** The usual range of a few hours of the day: nine tenths lie above `p10`, nine tenths below `p90`. */
export interface NormCell {
  readonly dayType: DayType | 'any';
  /** Clock block 0 to 5, or null for the whole day. */
  readonly block: number | null;
  /** Quiet days that it rests on. */
  readonly days: number;
  readonly p10: number;
  readonly median: number;
  readonly p90: number;
}

/** How a point follows the outdoor temperature of the day. */
export interface OutdoorTie {
  readonly point: string;
  /** Units of the figure a kelvin. */
  readonly slope: number;
  readonly usualOutdoor: number;
  /** Daily mean by day of the calendar. */
  readonly outdoor: Float64Array;
}

/** What is usual for one figure of one circuit or suction group of this site, learnt from its own quiet days. */
export interface Norm {
  readonly circuit: string | null;
  readonly suctionGroup: string | null;
  readonly id: Figure['id'];
  readonly point: string | null;
  readonly unit: Figure['unit'];
  /** Ranges of single readings (air, pressure, level), or of the figures of clock blocks. */
  readonly of: 'readings' | 'blocks';
  readonly quietDays: number;
  /** Since when nothing is learnt because a finding stands; null where none does. */
  readonly frozenSince: EpochMs | null;
  readonly cells: readonly NormCell[];
  readonly tie: OutdoorTie | null;
  /** The figure by clock block, for what it shows now. */
  readonly values: Float64Array;
}
