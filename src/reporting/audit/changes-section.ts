import { type MonthAudit, tableNamed } from '../../audit/month-audit.ts';
import { type Html, html } from '../html/escape.ts';
import { htmlTable, numberColumn, wordColumn } from '../html/table.ts';
import { siteScale } from '../site-scale.ts';
import { cellText, timeText } from './cell-text.ts';
import { groupBy, groupRows, type RowView, viewOf } from './table-view.ts';

/** A change that comes so often at one hour of the day is a schedule, and is said once. */
const leastTimes = 4;

export function changesSection(audit: MonthAudit): Html {
  const { temperatureSign: sign } = siteScale(audit.scope.log);
  const { rows } = viewOf(tableNamed(audit, 'changes'));
  const heading = html`<h2>Set-point changes, stops, overrides</h2>`;
  if (rows.length === 0) {
    return html`${heading}<p>None is seen: no set point moved, no circuit was shut off, no valve was held open.</p>`;
  }
  const columns = [
    wordColumn('When'),
    wordColumn('Circuit'),
    wordColumn('What'),
    numberColumn(`From, ${sign}`),
    numberColumn(`To, ${sign}`),
    wordColumn('Until'),
    wordColumn('Known by'),
  ];
  return html`${heading}
${htmlTable('Changes', columns, repeatedOnce(rows).map(changeRow))}`;
}

interface Repeated {
  readonly row: RowView;
  readonly times: number;
}

const hourOf = (row: RowView): string => timeText(row('at')).slice(11, 13);

function repeatedOnce(rows: readonly RowView[]): Repeated[] {
  const alike = groupRows(rows, ['circuit', 'what', 'from', 'to']);
  return alike
    .flatMap((group) => {
      return groupBy(group, hourOf).flatMap((same): Repeated[] =>
        same.length >= leastTimes && same[0]!('what') === 'set point'
          ? [{ row: same[0]!, times: same.length }]
          : same.map((row) => ({ row, times: 1 })),
      );
    })
    .sort((a, b) => (timeText(a.row('at')) < timeText(b.row('at')) ? -1 : 1));
}

function changeRow({ row, times }: Repeated): string[] {
  const when = timeText(row('at'));
  return [
    times === 1 ? when : `at ${hourOf(row)} h on ${times} days, first ${when}`,
    cellText(row('circuit')),
    cellText(row('what')),
    cellText(row('from'), 1),
    cellText(row('to'), 1),
    row('what') === 'set point' ? '' : row('end') === null ? 'still so' : timeText(row('end')),
    cellText(row('knownFrom')),
  ];
}
