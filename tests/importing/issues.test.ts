import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { issueCatalogue } from '../../src/importing/issues/catalogue.ts';
import { IssueLog } from '../../src/importing/issues/issue-log.ts';
import { issuesReference } from './issues-reference.ts';

const root = join(import.meta.dirname, '../..');
const sources = ['src/importing', 'src/opening'].flatMap((folder) =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !/[\\/]?issues[\\/]/u.test(name))
    .map((name) => readFileSync(join(root, folder, name), 'utf8')),
);

describe('the catalogue of issues', () => {
  it('is what docs/reference/import-issues.md says', () => {
    expect(readFileSync(join(root, 'docs/reference/import-issues.md'), 'utf8')).toBe(issuesReference());
  });

  it('holds every code that the code uses', () => {
    const used = sources.flatMap((text) =>
      [...text.matchAll(/(?:code: |ImportRefusal\(\s*|issues\.add\(\s*)'([a-z-]+)'/gu)].map(
        ([, code]) => code!,
      ),
    );
    expect(used.length).toBeGreaterThan(20);
    expect(used.filter((code) => !(code in issueCatalogue))).toEqual([]);
  });

  it('holds no code that nothing uses', () => {
    const all = sources.join('\n');
    expect(Object.keys(issueCatalogue).filter((code) => !all.includes(`'${code}'`))).toEqual([]);
  });
});

describe('an issue', () => {
  it('says what happened, where, how often, as written, and what to do', () => {
    const log = new IssueLog('rack.csv');
    log.add('fault-word', { line: 101, column: 'M01 air A', example: 'Fail' });
    log.add('fault-word', { line: 99, column: 'M01 air A', example: 'Short' });
    expect(log.issues()).toEqual([
      {
        code: 'fault-word',
        line: 99,
        column: 'M01 air A',
        count: 2,
        message:
          'rack.csv, line 99, column “M01 air A”: a word for a fault stands in place of a value (2 times). As written: “Fail”, “Short”. Check the probe and its wiring if it is often. [fault-word]',
        examples: ['Fail', 'Short'],
      },
    ]);
  });

  it('of very many kinds takes bounded room', () => {
    const log = new IssueLog('rack.csv');
    for (let column = 0; column < 5000; column++) log.add('missing-word', { column: `P${column}` });
    expect(log.issues().length).toBeLessThan(2100);
    expect(log.issues().reduce((sum, issue) => sum + issue.count, 0)).toBe(5000);
  });
});
