import type { Circuit, Log, SuctionGroup } from '../model/log.ts';
import type { Celsius, Kelvin, Minutes } from '../units/quantities.ts';
import type { RecordFacts } from './record-facts.ts';

/** What a circuit is doing at one sample. Every analysis reads the same `phase` array. */
export const Phase = { unknown: 0, cooling: 1, defrost: 2, recovery: 3, off: 4 } as const;
export type PhaseCode = (typeof Phase)[keyof typeof Phase];

/** How one probe went through one defrost. Temperatures NaN where too little was logged. */
export interface ProbeDefrost {
  /** Median over the cooling samples of the hour before the start. */
  readonly before: Celsius;
  readonly peak: Celsius;
  /** Median of the last 20 minutes of the window (of its last half when shorter). */
  readonly late: Celsius;
  /** Fastest rise over five minutes, K/min. */
  readonly riseRate: number;
  /** Minutes spent within 0.6 K of the melting point. */
  readonly plateauMinutes: Minutes;
  /**
   * From the end of the window until the 10-minute mean is back at the probe's own level before the defrost
   * (held between its usual level and 0.5 K above) + half the dead band + 0.6 K; null when that did not happen before the
   * next defrost, a gap or the end.
   */
  readonly recoveryMinutes: Minutes | null;
  /** When not recovered: minutes watched until the next defrost, gap or end (right-censored). */
  readonly watchedMinutes: Minutes;
}

export interface DefrostWindow {
  /** Samples `from` (inclusive) to `to` (exclusive). */
  readonly from: number;
  readonly to: number;
  readonly source: 'status' | 'schedule' | 'shape';
  /** False when the window touches a gap or an end of the log. */
  readonly complete: boolean;
  /** One entry a probe of the circuit, in its order. */
  readonly probes: readonly ProbeDefrost[];
}

/** A time of day at which this circuit usually defrosts. */
export interface DefrostSlot {
  /** Local minute of the day. */
  readonly minute: Minutes;
  readonly expected: number;
  readonly seen: number;
  /** Samples at which a defrost was due, with the record complete: `expected` of them. */
  readonly due: readonly number[];
  /** Samples at which a defrost was due, with the record complete, and did not come. */
  readonly missed: readonly number[];
}

/** An uninterrupted stretch of one state; one that touches a gap or an end is not `whole`. */
export interface Spell {
  readonly from: number;
  readonly to: number;
  readonly on: boolean;
  readonly whole: boolean;
}

/** Spells in the order of time, by columns: a valve has thousands in a month. */
export interface Spells {
  readonly count: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** 1 or 0. */
  readonly on: Uint8Array;
  readonly whole: Uint8Array;
}

/** Daily figures of one probe; each array has one value a day of the calendar, NaN where too little is known. */
export interface ProbeDays {
  /** Interpolated median of settled air over the whole day. */
  readonly median: Float64Array;
  /** The same between 01:00 and 05:00 local. */
  readonly night: Float64Array;
  /** The same between 10:00 and 20:00 local. */
  readonly day: Float64Array;
  readonly p10: Float64Array;
  readonly p90: Float64Array;
  /** Robust cycle amplitude: p90 − p10 of the deviation from a one-hour running mean, in settled air. */
  readonly swing: Float64Array;
  /** Median over the day's defrosts of the level late in defrost. */
  readonly lateDefrost: Float64Array;
  /** Median over the day's defrosts of the peak. */
  readonly peak: Float64Array;
  /** Median of recovery minutes, the watched minutes standing in for censored ones. */
  readonly recovery: Float64Array;
  /** Share of the day's settled-air samples that hold a value, 0 to 1. */
  readonly coverage: Float64Array;
}

export interface SetPointStep {
  readonly at: number;
  readonly from: Celsius;
  readonly to: Celsius;
  /** `level`: no set point is logged, and all probes moved by one step while the circuit went on cycling. */
  readonly source: 'column' | 'level';
}

export interface CircuitSignals {
  readonly circuit: Circuit;
  readonly log: Log;
  /** One entry a probe of the circuit, in its order. */
  readonly facts: readonly RecordFacts[];
  /** Which probes say anything: false for one that is mostly missing or never moves. */
  readonly usable: readonly boolean[];
  /** Median over the usable probes at each sample, NaN where none is known. */
  readonly air: Float64Array;
  /** One code a grid sample. */
  readonly phase: Uint8Array;
  readonly defrosts: readonly DefrostWindow[];
  readonly defrostSource: 'status' | 'schedule' | 'shape' | 'none';
  readonly slots: readonly DefrostSlot[];
  /** One entry a probe, in the circuit's order. */
  readonly probes: readonly ProbeDays[];
  /** Daily median of (mean of the usable probes) − set point; of the mean itself where no set point is known. */
  readonly level: Float64Array;
  /** Daily median of the set point; NaN where none is known. */
  readonly setPoint: Float64Array;
  readonly setPointSteps: readonly SetPointStep[];
  /** Daily share of settled time with the valve feeding, 0 to 1; all NaN without a valve column. */
  readonly duty: Float64Array;
  /** Valve spells; empty without an on/off valve column. */
  readonly valveSpells: Spells;
  /** Stretches in which the circuit was shut off (samples, half open). */
  readonly offSpells: readonly { readonly from: number; readonly to: number }[];
}

export interface GroupSignals {
  readonly group: SuctionGroup;
  /** Ids of the circuits it feeds. */
  readonly members: readonly string[];
  /** Daily median suction pressure, kPa absolute. */
  readonly suction: Float64Array;
  readonly suctionTarget: Float64Array;
  /** Daily median saturated suction temperature (dew), NaN where the refrigerant is unknown. */
  readonly saturatedSuction: Float64Array;
  /** For each member, the daily median over the *other* members of (level − its own baseline level), K. */
  readonly peers: ReadonlyMap<string, Float64Array>;
  /** For each member its daily level minus its own baseline, K. */
  readonly departures: ReadonlyMap<string, Float64Array>;
  /** Run spells of each compressor, in the order of `group.compressors`. */
  readonly compressorSpells: readonly Spells[];
}

/** Everything the analyses share: computed once, so that two of them never disagree about a defrost. */
export interface Signals {
  readonly log: Log;
  readonly circuits: readonly CircuitSignals[];
  readonly groups: readonly GroupSignals[];
}

/** A difference below which healthy neighbours in one line-up usually stand. Common practice, no source. */
export const healthyNeighbourSpread: Kelvin = 1.7;
