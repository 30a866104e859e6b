import { monthSentence } from '../../audit/month.ts';
import { type MonthAudit, tableNamed } from '../../audit/month-audit.ts';
import type { Cell } from '../../audit/table.ts';
import { formatMinutes } from '../../units/display.ts';
import { airNotFood } from '../air-not-food.ts';
import { headline } from '../headline.ts';
import { reportOrder } from '../report-order.ts';
import { siteScale } from '../site-scale.ts';
import { type TextColumn, textColumns } from '../terminal/columns.ts';
import type { Paint } from '../terminal/paint.ts';
import { indented } from '../terminal/wrap.ts';
import { visibleText } from '../visible-text.ts';
import { alarmLines } from './alarm-lines.ts';
import { cellText, shareText } from './cell-text.ts';
import { energyLines } from './energy-lines.ts';

/** The month at a terminal: what it rests on, every circuit, what the alarms would have done. */
export function auditSummary(audit: MonthAudit, paint: Paint): string {
  const { log, diagnosis, month } = audit.scope;
  const list = (title: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : [paint.bold(title), ...lines.flatMap((line) => indented(line, 2, paint.width))];
  const sections = [
    [paint.bold(visibleText(log.site)), ...indented(monthSentence(log, month), 0, paint.width)],
    indented(headline(reportOrder(diagnosis, log), diagnosis, log), 0, paint.width),
    [paint.bold('Every circuit'), ...circuitColumns(audit)],
    list('What the alarms would have said', alarmLines(audit.scope)),
    list('Energy, as rules of thumb', energyLines(audit)),
    indented(airNotFood, 0, paint.width),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

function circuitColumns(audit: MonthAudit): string[] {
  const { temperatureSign } = siteScale(audit.scope.log);
  const table = tableNamed(audit, 'circuits');
  const at = (row: readonly Cell[], name: string): Cell | undefined =>
    row[table.columns.findIndex((column) => column.name === name)];
  const number = (title: string): TextColumn => ({ title, align: 'right' });
  return textColumns(
    [
      { title: 'circuit', align: 'left' },
      number(`set, ${temperatureSign}`),
      number(`air, ${temperatureSign}`),
      number('spread'),
      number('valve open'),
      number('defrosts'),
      number('missed'),
      number('recovery'),
      number('above limit'),
      number('logged'),
    ],
    table.rows.map((row) => [
      cellText(at(row, 'circuit')),
      cellText(at(row, 'setPoint'), 1),
      cellText(at(row, 'median'), 1),
      cellText(at(row, 'spread'), 1),
      shareText(at(row, 'duty')),
      cellText(at(row, 'defrosts')),
      cellText(at(row, 'defrostsMissed')),
      minutesText(at(row, 'recoveryMedianMinutes')),
      minutesText(at(row, 'aboveLimitMinutes')),
      shareText(at(row, 'coverage')),
    ]),
  );
}

function minutesText(cell: Cell | undefined): string {
  return typeof cell === 'number' ? formatMinutes(cell).replace(/minutes?/, 'min') : '–';
}
