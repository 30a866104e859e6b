/** Bytes read but not yet used, kept in one buffer that moves and grows as needed. */
export class ByteBuffer {
  bytes = new Uint8Array(1 << 18);
  /** First byte not yet used, and the end of those there are. */
  from = 0;
  end = 0;
  /** Up to here there is no line end. */
  private searched = 0;

  get length(): number {
    return this.end - this.from;
  }

  append(chunk: Uint8Array): void {
    const free = this.bytes.length - this.end;
    // One byte more is kept free for the line end that closes a last line without one.
    if (chunk.length + 1 > free) this.makeRoom(chunk.length + 1);
    this.bytes.set(chunk, this.end);
    this.end += chunk.length;
  }

  private makeRoom(needed: number): void {
    const { length } = this;
    let size = this.bytes.length;
    while (size < length + needed) size *= 2;
    const target = size === this.bytes.length ? this.bytes : new Uint8Array(size);
    target.set(this.bytes.subarray(this.from, this.end));
    this.bytes = target;
    this.searched = Math.max(0, this.searched - this.from);
    this.from = 0;
    this.end = length;
  }

  /** Position after the last line end that surely is a whole one, at or after `from`; -1 where there is none. */
  lastLineEnd(): number {
    const stop = Math.max(this.from, this.searched);
    for (let at = this.end - 1; at >= stop; at--) {
      const byte = this.bytes[at]!;
      // A carriage return at the very end may be the first half of a line end.
      if (byte === 10 || (byte === 13 && at < this.end - 1)) return at + 1;
    }
    this.searched = Math.max(stop, this.end - 1);
    return -1;
  }
}
