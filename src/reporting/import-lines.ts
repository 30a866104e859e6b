import type { ImportIssue, ImportReport } from '../model/import-report.ts';

const zoneReasons: Readonly<Record<ImportReport['timeZoneSource'], string>> = {
  site: 'from the site file',
  option: 'from --time-zone',
  machine: "this machine's; --time-zone or a site file says otherwise",
  'offsets-in-export': 'the export carries its own offsets',
};

const counted = (count: number, word: string): string => `${number(count)} ${word}${count === 1 ? '' : 's'}`;

const number = (value: number): string => String(value).replace(/\B(?=(\d{3})+$)/g, ',');

function place({ line, column }: ImportIssue): string {
  const parts = [line === null ? null : `line ${line}`, column === null ? null : `column ${column}`];
  const known = parts.filter((part) => part !== null);
  return known.length === 0 ? '' : ` (${known.join(', ')})`;
}

function issueLine(issue: ImportIssue): string {
  const times = issue.count > 1 ? `${number(issue.count)} × ` : '';
  return `${times}${issue.message}${place(issue)}`;
}

/** One file and what happened to it. */
export interface ImportLines {
  readonly heading: string;
  readonly details: readonly string[];
}

/** What was read, what was rejected, which choices were made and how to take the other one. */
export function importLines(report: ImportReport): readonly ImportLines[] {
  const files = report.files.map((file) => {
    const rejected =
      file.rowsRejected + file.valuesRejected === 0
        ? 'nothing rejected'
        : `${counted(file.rowsRejected, 'row')} and ${counted(file.valuesRejected, 'value')} rejected`;
    const choices = file.choices.map(({ about, chosen, because, override }) => {
      const other = override === null ? '' : `; otherwise ${override}`;
      return `${about}: ${chosen}, because ${because}${other}`;
    });
    return {
      heading: `${file.name}: ${counted(file.rows, 'row')}, ${counted(file.values, 'value')}, ${rejected}`,
      details: [...choices, ...file.issues.map(issueLine)],
    };
  });
  const zone = `Times are in ${report.timeZone} (${zoneReasons[report.timeZoneSource]})`;
  return [...files, { heading: zone, details: report.issues.map(issueLine) }];
}
