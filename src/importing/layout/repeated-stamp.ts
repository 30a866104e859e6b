const longest = 40;

/** The time stamp of the row above, to know it again: logs of all points at once write the same one for each. */
export class RepeatedStamp {
  /** Bytes of the stamp; 0 while none is kept. */
  length = 0;
  wallMs = Number.NaN;
  /** As `TableReader` has it for that row. */
  dayShiftMs = Number.NaN;
  hasOffset = false;
  private readonly bytes = new Uint8Array(longest);

  /** Keeps the stamp that stands, bare, in `bytes[from, to)`. */
  keep(
    bytes: Uint8Array,
    from: number,
    to: number,
    wallMs: number,
    dayShiftMs: number,
    hasOffset: boolean,
  ): void {
    this.length = to - from > longest ? 0 : to - from;
    for (let at = 0; at < this.length; at++) this.bytes[at] = bytes[from + at]!;
    this.wallMs = wallMs;
    this.dayShiftMs = dayShiftMs;
    this.hasOffset = hasOffset;
  }

  /** Another order of day and month reads it otherwise. */
  forget(): void {
    this.length = 0;
  }

  isAt(bytes: Uint8Array, from: number): boolean {
    const { length, bytes: kept } = this;
    for (let at = 0; at < length; at++) if (bytes[from + at] !== kept[at]) return false;
    return length > 0;
  }
}
