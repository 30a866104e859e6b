/** Samples `from` (inclusive) to `to` (exclusive) in which a circuit seems to defrost. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}
