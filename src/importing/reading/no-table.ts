import { looksLikeHeader } from '../header/looks-like-header.ts';
import { cellType } from '../layout/cell-types.ts';
import { countedWithoutStart } from '../layout/reshaping/counted-times.ts';
import { stampsWithoutYear } from '../layout/reshaping/missing-year.ts';
import type { SampleRow } from '../layout/table-plan.ts';
import { timeWords } from '../layout/time-column.ts';
import { ImportRefusal } from '../readings.ts';
import { visibleText } from '../values/clean-text.ts';

const mostCells = 60;

/** Why no table was found in a text, as far as its first rows tell: what they seem to be, and what to export instead. */
export function noTable(name: string, found: readonly SampleRow[]): ImportRefusal {
  const rows = found.map((row) => ({ ...row, cells: row.cells.slice(0, mostCells) }));
  const shown = rows.map(({ cells }) => cells.map(visibleText));
  if (shown.length > 0 && shown.length < 20 && endsInHeader(shown)) {
    return new ImportRefusal(
      'no-readings',
      `${name} has a header but no rows below it. Choose a span that has data and export again.`,
    );
  }
  const yearless = stampsWithoutYear({
    rows,
    typeOf: (row, column) => cellType(rows[row]!.cells[column] ?? ''),
  });
  if (yearless !== null) {
    return new ImportRefusal(
      'year-missing',
      `${name} line ${rows[yearless.firstRow]!.line}: the times have no year (“${yearless.example}”), and neither a line above them nor the name of the file has one. Give that of the first row, such as --year 2026, or export with the year.`,
    );
  }
  const because = reason(rows, shown);
  return new ImportRefusal(
    'no-table',
    `${name}: ${because ?? 'no table with a time in each row was found in this text. Export with a time column, one row a time or one row a reading'}.`,
  );
}

function reason(rows: readonly SampleRow[], shown: readonly (readonly string[])[]): string | null {
  const share = (isOne: (cells: readonly string[]) => boolean): number =>
    shown.length < 3 ? 0 : shown.filter(isOne).length / shown.length;
  const first = (form: RegExp) => (cells: readonly string[]) => form.test(cells[0] ?? '');
  if (share((cells) => cells.length > 1 && first(/^#{3,}$/u)(cells)) > 0.5)
    return 'the times are written as “####”, which a spreadsheet shows where a column is too narrow. Make the column wider and save again';
  if (share((cells) => cells.length > 1 && first(/^\d{1,2}:\d\d\.\d$/u)(cells)) > 0.5)
    return 'the times are cut to minutes and seconds (“05:00.0”), as a spreadsheet shows them. Give the column the format yyyy-mm-dd hh:mm:ss and save again';
  if (share((cells) => cells.length > 1 && cellType(cells[0] ?? '') === 'clock') > 0.5)
    return 'the rows carry a time of day but no date, and no line above them names one. Export with the date, or write it on a line of its own above the header';
  const lineEnd = rows.length > 3 ? null : otherLineEnd(rows);
  if (lineEnd !== null)
    return `the lines end in ${lineEnd}, which is no line end here. Save the text with ordinary line ends`;
  const counted = countedWithoutStart(rows);
  if (counted !== null)
    return `the rows count from a start or number the readings (“${counted}”), and no line above them says when they began. Export with dates, or write a line such as “Start: 2026-09-03 00:00” above the header, with “Interval: 60 s” where readings are numbered`;
  if (
    share((cells) => /^(?:insert into|create table|values|update|drop table)\b/iu.test(cells[0] ?? '')) > 0.1
  )
    return 'this seems to be an SQL dump. Export the table as CSV';
  if (share((cells) => cells.length === 1 && /^[\w+/]{40,76}={0,2}$/u.test(cells[0]!)) > 0.8)
    return 'this seems to be base64, as mail carries attachments. Save the attachment itself and use that';
  if (share((cells) => (cells.join(',').match(/[\w)\]]=(?:"|[-\d]|\w)/gu)?.length ?? 0) > 1) > 0.8)
    return 'the rows seem to be pairs of name and value (name=value). Export as CSV with one column a point';
  const headerRow = shown.findIndex((cells) => cells.length > 1 && looksLikeHeader(cells));
  const at = headerRow < 0 ? -1 : shown[headerRow]!.findIndex((cell) => timeWords.test(cell));
  const example = shown.slice(headerRow + 1).find((cells) => /\d/u.test(cells[at] ?? ''))?.[at];
  if (at >= 0 && example !== undefined)
    return `the cells below “${shown[headerRow]![at]}”, such as “${example.slice(0, 60)}”, are no times in a form that is known here. Export them as 2026-09-03 00:05:00`;
  return null;
}

const lineEnds: readonly (readonly [string, string])[] = [
  ['\u0085', 'U+0085 (next line)'],
  ['\u2028', 'U+2028 (line separator)'],
  ['\u2029', 'U+2029 (paragraph separator)'],
  ['\u000b', 'vertical tabs'],
  ['\u000c', 'form feeds'],
  ['\u001e', 'record separators'],
];

/** A mark that stands many times in a text of hardly any lines. */
function otherLineEnd(rows: readonly SampleRow[]): string | null {
  const text = rows.map(({ cells }) => cells.join(' ')).join(' ');
  return lineEnds.find(([mark]) => text.split(mark).length > 5)?.[1] ?? null;
}

function endsInHeader(shown: readonly (readonly string[])[]): boolean {
  const cells = shown.at(-1) ?? [];
  const texts = cells.filter((cell) => /\p{L}/u.test(cell)).length;
  return (
    cells.length > 1 &&
    texts * 2 > cells.length &&
    /time|date|stamp|zeit|datum|heure|hora|fecha/iu.test(cells.slice(0, 3).join(' '))
  );
}
