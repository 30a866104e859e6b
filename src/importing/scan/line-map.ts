/** Lines of the file by row number, kept as runs: rows follow each other line by line but for a few places. */
export class LineMap {
  private readonly rows: number[] = [];
  private readonly lines: number[] = [];
  private expected = -1;

  /** Row `row` (counted up from 0) begins in `line`. */
  note(row: number, line: number): void {
    if (line !== this.expected) {
      this.rows.push(row);
      this.lines.push(line);
    }
    this.expected = line + 1;
  }

  lineOf(row: number): number | null {
    let low = 0;
    let high = this.rows.length - 1;
    if (high < 0) return null;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.rows[middle]! <= row) low = middle;
      else high = middle - 1;
    }
    return this.lines[low]! + row - this.rows[low]!;
  }
}
