/** Clocks put back in autumn run through an hour again within the day. */
const mostBackMs = 3_600_000;

/**
 * The date of rows that leave it out, in a table that writes it on the first row of each day: that of the row above,
 * until the clock runs back, from where on the day is not known.
 */
export class CarriedDate {
  private date = '';
  private latestMs = Number.NEGATIVE_INFINITY;

  /** Date of a row at `clockMs` of the day whose own date is `written`; empty where it is not known. */
  of(written: string, clockMs: number): string {
    if (written !== '') {
      this.date = written;
      this.latestMs = clockMs;
    } else if (clockMs < this.latestMs - mostBackMs) this.date = '';
    else if (clockMs > this.latestMs) this.latestMs = clockMs;
    return this.date;
  }
}
