import type { IssueLog } from '../issues/issue-log.ts';

/** One name a column: as in the export; “column N” where it is empty, “Name (2)” where it repeats. */
export function columnNames(
  header: readonly string[] | null,
  width: number,
  /** Positions of the columns that hold values. */
  named: ReadonlySet<number>,
  line: number | null,
  issues: IssueLog,
): string[] {
  const seen = new Map<string, number>();
  const taken = new Set(header ?? []);
  const names: string[] = [];
  for (let at = 0; at < width; at++) {
    const written = header?.[at] ?? '';
    if (written === '') {
      names.push(`column ${at + 1}`);
      if (header !== null && named.has(at)) issues.add('name-empty', { line, column: `column ${at + 1}` });
      continue;
    }
    const before = seen.get(written) ?? 0;
    let number = before + 1;
    let name = written;
    if (before > 0) {
      while (taken.has(`${written} (${number})`)) number++;
      name = `${written} (${number})`;
      taken.add(name);
      issues.add('name-repeated', { line, column: written, example: name });
    }
    seen.set(written, number);
    names.push(name);
  }
  return names;
}
