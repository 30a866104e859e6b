import { type IssueCode, issueCatalogue } from '../../../src/importing/issues/catalogue.ts';
import { LongTable } from '../../../src/importing/layout/long-table.ts';
import { WideTable } from '../../../src/importing/layout/wide-table.ts';
import { ImportRefusal, type Readings } from '../../../src/importing/readings.ts';
import { memorySource, normalized, onlyReport, readSources } from '../support.ts';
import { withBoundedWork } from './bounded-work.ts';
import { type Binary, bytesOfBinary } from './corpus.ts';

const fileName = 'export.csv';

type Outcome = Readings | ImportRefusal;

async function outcomeOf(content: Uint8Array, chunkLength: number): Promise<Outcome> {
  try {
    return await readSources([memorySource(fileName, content, chunkLength)], { zone: 'America/Denver' });
  } catch (error) {
    if (error instanceof ImportRefusal) return error;
    throw error;
  }
}

interface PlainRows {
  plainRow(bytes: Uint8Array, at: number): number;
}

/** Runs with the path for plain rows closed: every row goes the way of rows with quotes, as text cells. */
async function withoutPlainRows<T>(run: () => Promise<T>): Promise<T> {
  const tables = [WideTable.prototype, LongTable.prototype] as unknown as PlainRows[];
  const own = tables.map(({ plainRow }) => plainRow);
  for (const table of tables) table.plainRow = () => -1;
  try {
    return await run();
  } finally {
    for (const [at, table] of tables.entries()) table.plainRow = own[at]!;
  }
}

/** Everything that was read and said, as text that can be compared. */
function told(outcome: Outcome): string {
  if (outcome instanceof ImportRefusal) return `${outcome.code}: ${outcome.message}`;
  const columns = outcome.columns.map(({ times, values, ...rest }) => ({
    ...rest,
    times: [...times],
    values: [...values].map(String),
  }));
  return JSON.stringify({ report: outcome.report, columns }, null, 1);
}

function expectThat(holds: boolean, promise: () => string): void {
  if (!holds) throw new Error(promise());
}

/** Looks at one outcome against what the importer promises of every file. */
function looksRight(outcome: Outcome, lines: number): void {
  if (outcome instanceof ImportRefusal) {
    const { code, message } = outcome;
    expectThat(
      code in issueCatalogue && issueCatalogue[code as IssueCode].effect === 'refusal',
      () => `a refusal of the catalogue: ${code}`,
    );
    expectThat(/^export\.csv.*[.\]]$/su.test(message), () => `a refusal in a sentence: ${message}`);
    return;
  }
  const report = onlyReport(outcome);
  const { rows, rowsRejected, values, valuesRejected, issues } = report;
  const read = outcome.columns.reduce(
    (sum, column) => sum + column.values.filter((value) => !Number.isNaN(value)).length,
    0,
  );
  const counts = JSON.stringify({ rows, rowsRejected, values, valuesRejected, read });
  expectThat(read === values - valuesRejected, () => `values in are imported and rejected: ${counts}`);
  expectThat(read > 0 && rowsRejected <= rows && rows <= lines + values, () => `rows in the file: ${counts}`);
  for (const issue of issues) {
    expectThat(issue.code in issueCatalogue, () => `an issue of the catalogue: ${issue.code}`);
    expectThat(issue.count > 0, () => `an issue that was met: ${issue.message}`);
    expectThat(
      issue.line === null || (issue.line >= 1 && issue.line <= lines),
      () => `a line of the file: ${issue.message}`,
    );
  }
  const reasonFor = (effect: string): boolean =>
    issues.some(({ code }) => issueCatalogue[code as IssueCode].effect === effect);
  expectThat(rowsRejected === 0 || reasonFor('row'), () => `a reason for rows left out: ${counts}`);
  expectThat(
    valuesRejected === 0 || reasonFor('row') || reasonFor('value'),
    () => `a reason for values left out: ${counts}`,
  );
  const names = outcome.columns.map(({ point }) => point);
  expectThat(new Set(names).size === names.length, () => `names of their own: ${names.join(' | ')}`);
  for (const { point, times, values: column } of outcome.columns) {
    expectThat(times.length === column.length, () => `a time for each value of “${point}”`);
    expectThat(
      times.every((time, at) => Number.isFinite(time) && (at === 0 || time > times[at - 1]!)),
      () => `times of “${point}” that ascend`,
    );
    expectThat(
      column.every((value) => Number.isNaN(value) || Math.abs(value) <= 1e300),
      () => `values of “${point}” that are numbers`,
    );
  }
  expectThat(
    !/,(?:NaN|undefined|-?Infinity),[^,]*$/mu.test(normalized(outcome)),
    () => 'a tidy form of numbers only',
  );
}

/**
 * Reads a file in every way it can be read and throws where a promise is broken: refused in a sentence or read
 * with every row and value accounted for, alike on both paths and in chunks of any length, without undue work.
 */
export async function keepsPromises(file: Binary, chunkLength: number): Promise<void> {
  const content = bytesOfBinary(file);
  const whole = await withBoundedWork(content.length, () => outcomeOf(content, content.length + 1));
  looksRight(whole, file.split(/\r\n|\n|\r/u).length + file.split('\0').length);
  const asText = await withoutPlainRows(() => outcomeOf(content, content.length + 1));
  sameAs(whole, asText, 'the path for plain rows and that through papaparse');
  sameAs(whole, await outcomeOf(content, chunkLength), `chunks of ${chunkLength} bytes and the whole`);
}

function sameAs(one: Outcome, other: Outcome, what: string): void {
  const [a, b] = [told(one).split('\n'), told(other).split('\n')];
  const at = a.findIndex((line, index) => line !== b[index]);
  expectThat(at < 0 && a.length === b.length, () => `${what} come to the same: “${a[at]}”, “${b[at]}”`);
}
