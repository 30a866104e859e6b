import type { EpochMs, Quantity } from '../units/quantities.ts';

/**
 * Every change of a logged state, as the export has it; kept only for change-of-value columns. A value of NaN:
 * nothing is known from there on.
 */
export interface Changes {
  readonly times: Float64Array;
  readonly values: Float64Array;
}

/**
 * The history of one point, aligned to the grid of its log.
 *
 * `values` has one number a grid sample, in the unit that `quantity` has inside rimelog (Celsius, Kelvin,
 * Kilopascal absolute, 0 or 1, a fraction); NaN where nothing is known.
 */
export interface Record {
  /** The point: its column header as in the export, trimmed (contract §2). */
  readonly point: string;
  readonly quantity: Quantity;
  /** UCUM code of the unit in the export, `''` for none. */
  readonly exportUnit: string;
  readonly values: Float64Array;
  /** Smallest step between different values, in the unit of `values`; 0 when it cannot be told. */
  readonly resolution: number;
  /** Usual time between readings in the export, in ms; for change-of-value columns the grid step. */
  readonly intervalMs: number;
  readonly logging: 'sampled' | 'change-of-value';
  readonly changes: Changes | null;
  /** First and last reading in the export; null when the column is empty. */
  readonly first: EpochMs | null;
  readonly last: EpochMs | null;
}

/** A set point or target: a fixed number from the site file, or what the export logged. */
export type Target = number | Record;

export function targetAt(target: Target | null, index: number): number {
  if (target === null) return Number.NaN;
  return typeof target === 'number' ? target : target.values[index]!;
}
