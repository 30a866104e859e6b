import { monthSentence } from '../../audit/month.ts';
import { type MonthAudit, tableNamed } from '../../audit/month-audit.ts';
import type { MonthScope } from '../../audit/scope.ts';
import type { ImportReport } from '../../model/import-report.ts';
import { airNotFood } from '../air-not-food.ts';
import { headline, siteTitle } from '../headline.ts';
import { reportOrder } from '../report-order.ts';
import { siteScale } from '../site-scale.ts';
import { type TextColumn, textColumns } from '../terminal/columns.ts';
import type { Paint } from '../terminal/paint.ts';
import { hang, indented } from '../terminal/wrap.ts';
import { visibleText } from '../visible-text.ts';
import { alarmParagraphs } from './alarm-lines.ts';
import { cellText, minutesText, shareText } from './cell-text.ts';
import { energyLines } from './energy-lines.ts';
import { viewOf } from './table-view.ts';

/** The month at a terminal: what it rests on, every circuit, what the alarms would have done. */
export function auditSummary(audit: MonthAudit, report: ImportReport, paint: Paint): string {
  const { log, diagnosis, month } = audit.scope;
  const list = (title: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : [paint.bold(title), ...lines.flatMap((line) => indented(line, 2, paint.width))];
  const sections = [
    [paint.bold(visibleText(siteTitle(log, report))), ...indented(monthSentence(log, month), 0, paint.width)],
    indented(headline(reportOrder(diagnosis, log), diagnosis, log), 0, paint.width),
    log.circuits.length === 0 ? [] : [paint.bold('Every circuit'), ...circuitColumns(audit)],
    alarmSection(audit.scope, paint),
    list('Energy, as rules of thumb', energyLines(audit)),
    indented(airNotFood, 0, paint.width),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

function alarmSection(scope: MonthScope, paint: Paint): string[] {
  const paragraphs = alarmParagraphs(scope);
  if (paragraphs.length === 0) return [];
  return [
    paint.bold('What the alarms would have said'),
    ...paragraphs.flatMap(({ title, lines }) => [
      ...indented(visibleText(title), 2, paint.width),
      ...lines.flatMap((line) => hang('-', visibleText(line), 4, 2, paint.width)),
    ]),
  ];
}

function circuitColumns(audit: MonthAudit): string[] {
  const { temperatureSign: sign } = siteScale(audit.scope.log);
  const left = (title: string): TextColumn => ({ title, align: 'left' });
  const right = (title: string): TextColumn => ({ title, align: 'right' });
  const columns = [
    left('circuit'),
    ...['set', 'air'].map((title) => right(`${title}, ${sign}`)),
    right(`spread, ${sign}`),
    ...['valve open', 'defrosts', 'missed', 'recovery', 'above limit', 'logged'].map(right),
  ];
  const rows = viewOf(tableNamed(audit, 'circuits')).rows.map((row) => [
    cellText(row('circuit')),
    cellText(row('setPoint'), 1),
    cellText(row('median'), 1),
    cellText(row('spread'), 1),
    shareText(row('duty')),
    cellText(row('defrosts')),
    cellText(row('defrostsMissed')),
    minutesText(row('recoveryMedianMinutes')),
    minutesText(row('aboveLimitMinutes')),
    shareText(row('coverage')),
  ]);
  return textColumns(columns, rows);
}
