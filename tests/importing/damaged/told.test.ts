import { beforeAll, describe, expect, it } from 'vitest';
import { type IssueCode, issueCatalogue } from '../../../src/importing/issues/catalogue.ts';
import { normalized, normalizedContent, onlyReport, readContent } from '../support.ts';
import { written } from './plain-log.ts';
import { cells, rows, type ToldLog, untouched } from './told.ts';

let plain: Set<string>;
beforeAll(async () => {
  plain = new Set((await normalizedContent(written())).split('\n'));
});

function isTold(logs: readonly ToldLog[], sameNames = true): void {
  it.each(logs)('$name', async ({ content, codes, lost, line }) => {
    const readings = await readContent(content());
    const report = onlyReport(readings);
    const text = normalized(readings).split('\n');
    const leavingOut = report.issues.filter(
      ({ code }) => issueCatalogue[code as IssueCode].effect !== 'note',
    );
    const expected = codes.filter((code) => issueCatalogue[code as IssueCode].effect !== 'note');
    expect(leavingOut.map(({ code }) => code).sort()).toEqual([...expected].sort());
    for (const code of codes) expect(report.issues.map((issue) => issue.code)).toContain(code);
    if (sameNames) expect(text.filter((row) => !plain.has(row))).toEqual([]);
    expect(plain.size - 1 - (text.length - 1)).toBe(lost);
    expect(text.length - 2).toBe(report.values - report.valuesRejected);
    if (line !== undefined) expect(report.issues.find(({ code }) => code === codes[0])!.line).toBe(line);
    for (const issue of report.issues) {
      expect(issue.message).toContain(`[${issue.code}]`);
      expect(issue.message).toContain('export.csv');
    }
  });
}

describe('rows that cannot be used are left out and named', () => isTold(rows));
describe('cells that are no reading are left out and named', () => isTold(cells));
describe('what is odd but whole is named', () => isTold(untouched, false));
