import { civilDate, dayMs } from './civil.ts';
import type { DateEvidence } from './date-order.ts';

/** The times of a file that a spreadsheet wrote as days since 1899-12-30. */
export class CountedDays {
  count = 0;
  private lastDay = Number.NaN;
  private lastLine = -1;
  private onlyEarlyDays = true;

  /** Notes a time of the row on `line`, once though the row may be looked at twice. */
  note(wallMs: number, line: number): void {
    if (line !== this.lastLine) this.count++;
    this.lastLine = line;
    const day = Math.floor(wallMs / dayMs);
    if (day === this.lastDay) return;
    this.lastDay = day;
    if (civilDate(day).day > 12) this.onlyEarlyDays = false;
  }

  /**
   * Whether the spreadsheet took day and month the wrong way round: it counted dates that exist in both orders and left
   * as text all that exist in one, which it would not have done in the order of the file.
   */
  areExchanged(written: DateEvidence): boolean {
    const oneWay = written.impossibleIn('mdy') + written.impossibleIn('dmy');
    return this.count > 0 && this.onlyEarlyDays && written.noted > 0 && oneWay >= written.noted;
  }
}
