/** Clocks put back in autumn run through an hour again within the day. */
const mostBackMs = 3_600_000;

/**
 * The date of rows that leave it out, in a table that writes it on the first row of each day: that of the row above,
 * until the clock runs against the direction of the rows, from where on the day is not known.
 */
export class CarriedDate {
  private date = '';
  private farthestMs = Number.NEGATIVE_INFINITY;
  private readonly direction: 1 | -1;

  constructor(newestFirst = false) {
    this.direction = newestFirst ? -1 : 1;
  }

  /** Date of a row at `clockMs` of the day whose own date is `written`; empty where it is not known. */
  of(written: string, clockMs: number): string {
    const onMs = this.direction * clockMs;
    if (written !== '') {
      this.date = written;
      this.farthestMs = onMs;
    } else if (onMs < this.farthestMs - mostBackMs) this.date = '';
    else if (onMs > this.farthestMs) this.farthestMs = onMs;
    return this.date;
  }
}
