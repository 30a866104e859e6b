import type { ImportChoice, ImportIssue } from '../../model/import-report.ts';
import { type IssueCode, issueCatalogue } from './catalogue.ts';

interface Tally {
  readonly code: IssueCode;
  readonly column: string | null;
  line: number | null;
  count: number;
  readonly examples: string[];
  detail: string;
}

export interface Sighting {
  readonly line?: number | null;
  readonly column?: string | null;
  readonly example?: string;
  readonly count?: number;
  /** What is particular here, put into the message. */
  readonly detail?: string;
}

const mostExamples = 3;
const mostTallies = 2000;

/** Counts what the importer notices in one file, grouped by code and column, with the first line and examples. */
export class IssueLog {
  readonly choices: ImportChoice[] = [];
  /** A number that could be read with either decimal mark, as written. */
  ambiguousNumber: string | null = null;
  private readonly tallies = new Map<string, Tally>();
  private readonly fileName: string;

  constructor(fileName: string) {
    this.fileName = fileName;
  }

  add(code: IssueCode, sighting: Sighting = {}): void {
    const { line = null, column = null, example, count = 1, detail = '' } = sighting;
    const own = `${code}\n${column ?? ''}`;
    const key = this.tallies.has(own) || this.tallies.size < mostTallies ? own : `${code}\n`;
    let tally = this.tallies.get(key);
    if (tally === undefined) {
      tally = { code, column: key === own ? column : null, line, count: 0, examples: [], detail };
      this.tallies.set(key, tally);
    }
    tally.count += count;
    if (line !== null && (tally.line === null || line < tally.line)) tally.line = line;
    if (example !== undefined && tally.examples.length < mostExamples) {
      const shown = shortened(example);
      if (!tally.examples.includes(shown)) tally.examples.push(shown);
    }
  }

  /** Adds what was noted of a column's cells. */
  addNoted(
    code: IssueCode,
    column: string,
    noted: { readonly count: number; readonly line: number | null; readonly examples: readonly string[] },
  ): void {
    const { count, line, examples } = noted;
    this.add(code, { line, column, count });
    for (const example of examples) this.add(code, { column, count: 0, example });
  }

  choose(about: string, chosen: string, because: string, override: string | null): void {
    if (this.choices.some((choice) => choice.about === about && choice.chosen === chosen)) return;
    this.choices.push({ about, chosen, because, override });
  }

  countOf(code: IssueCode): number {
    let count = 0;
    for (const tally of this.tallies.values()) if (tally.code === code) count += tally.count;
    return count;
  }

  issues(): ImportIssue[] {
    const found = [...this.tallies.values()].sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
    return found.map((tally) => ({
      code: tally.code,
      line: tally.line,
      column: tally.column,
      count: tally.count,
      message: this.message(tally),
      ...(tally.examples.length > 0 ? { examples: tally.examples } : {}),
    }));
  }

  private message(tally: Tally): string {
    const { what, remedy } = issueCatalogue[tally.code];
    const where = [this.fileName];
    if (tally.line !== null) where.push(`line ${tally.line}`);
    if (tally.column !== null) where.push(`column “${shortened(tally.column)}”`);
    const often = tally.count > 1 ? ` (${tally.count} times)` : '';
    const detail = tally.detail === '' ? '' : `: ${tally.detail}`;
    const shown =
      tally.examples.length > 0 ? ` As written: ${tally.examples.map((e) => `“${e}”`).join(', ')}.` : '';
    return `${where.join(', ')}: ${what}${detail}${often}.${shown} ${remedy} [${tally.code}]`;
  }
}

function shortened(written: string): string {
  const text = written.trim();
  return text.length <= 80 ? text : `${text.slice(0, 77)}…`;
}
