/** Shift of a day that a spreadsheet counted from its own reading of a date. */
export const countedDay = Number.POSITIVE_INFINITY;

/**
 * By row, how far the stored time stands from the day as it was written, kept as the rows where that changes: a
 * stamp at 24:00 or with an offset is stored under another date. NaN where the writing itself fixes the date.
 */
export class WrittenDays {
  private readonly rows: number[] = [];
  private readonly shifts: number[] = [];
  private last = 0;

  note(row: number, shiftMs: number): void {
    if (Object.is(shiftMs, this.last)) return;
    this.last = shiftMs;
    this.rows.push(row);
    this.shifts.push(shiftMs);
  }

  /** Milliseconds from the written day and clock to the stored time. */
  shiftOf(row: number): number {
    let low = 0;
    let high = this.rows.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.rows[middle]! <= row) low = middle + 1;
      else high = middle;
    }
    return low === 0 ? 0 : this.shifts[low - 1]!;
  }
}
