import type { FileReport, ImportReport } from '../model/import-report.ts';
import { placesText } from './open-questions.ts';

const zoneReasons: Readonly<Record<ImportReport['timeZoneSource'], string>> = {
  site: 'from the site file',
  option: 'from --time-zone',
  machine: "this machine's; --time-zone or a site file says otherwise",
  'offsets-in-export': 'the export carries its own offsets',
};

const number = (value: number): string => String(value).replace(/\B(?=(\d{3})+$)/g, ',');
const counted = (count: number, word: string): string => `${number(count)} ${word}${count === 1 ? '' : 's'}`;

/** A heading and what belongs under it. */
export interface ImportLines {
  readonly heading: string;
  readonly details: readonly string[];
}

function headingOf(file: FileReport): string {
  const rejected =
    file.rowsRejected + file.valuesRejected === 0
      ? 'nothing rejected'
      : `${counted(file.rowsRejected, 'row')} and ${counted(file.valuesRejected, 'value')} rejected`;
  return `${file.name}: ${counted(file.rows, 'row')}, ${counted(file.values, 'value')}, ${rejected}`;
}

function detailsOf({ choices, issues }: FileReport): readonly string[] {
  return [
    ...choices.map(({ about, chosen, because, override }) => {
      const other = override === null ? '' : `; otherwise ${override}`;
      return `${about}: ${chosen}, because ${because}${other}`;
    }),
    ...issues.map(({ message }) => message),
  ];
}

/** What was read, what was rejected, which choices were made and how to take the other one. */
export function importLines(report: ImportReport): readonly ImportLines[] {
  const holders = new Map<string, string[]>();
  for (const file of report.files) {
    for (const detail of new Set(detailsOf(file))) {
      holders.set(detail, [...(holders.get(detail) ?? []), file.name]);
    }
  }
  const files = report.files.map((file) => ({
    heading: headingOf(file),
    details: detailsOf(file).filter((detail) => holders.get(detail)!.length === 1),
  }));
  const shared = [...holders]
    .filter(([, names]) => names.length > 1)
    .map(([detail, names]) => `${placesText(names, 4)}: ${detail}`);
  const zone = `Times are in ${report.timeZone} (${zoneReasons[report.timeZoneSource]})`;
  return [...files, { heading: zone, details: [...shared, ...report.issues.map(({ message }) => message)] }];
}
