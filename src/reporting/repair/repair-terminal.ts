import type { Log } from '../../model/log.ts';
import type { RepairCheck } from '../../repair-check/check-repair.ts';
import type { RepairMeasure } from '../../repair-check/judge-figure.ts';
import { airNotFood } from '../air-not-food.ts';
import { changeText, figureText, figureTitle } from '../figure-text.ts';
import { circuitTitle } from '../report-order.ts';
import { textColumns } from '../terminal/columns.ts';
import type { Paint } from '../terminal/paint.ts';
import { hang, indented } from '../terminal/wrap.ts';
import { visibleText } from '../visible-text.ts';
import { leftOpenLines, verdictText, windowsText } from './repair-words.ts';

/** Did the repair hold, for a person at a terminal. */
export function repairReport(check: RepairCheck, log: Log, paint: Paint): string {
  const sections = [
    [paint.bold(visibleText(circuitTitle(log, check.circuit)))],
    indented(verdictText(check), 0, paint.width).map((line) => paint.bold(visibleText(line))),
    indented(windowsText(check, log), 0, paint.width),
    measureLines(check, log),
    [
      paint.bold('Everything back on?'),
      ...leftOpenLines(check, log).flatMap((line) => hang('-', visibleText(line), 2, 2, paint.width)),
    ],
    indented(airNotFood, 0, paint.width),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

function measureLines(check: RepairCheck, log: Log): string[] {
  if (check.measures.length === 0) return [];
  return textColumns(
    [
      { title: 'measure', align: 'left' },
      { title: 'usual', align: 'right' },
      { title: 'before', align: 'right' },
      { title: 'after', align: 'right' },
      { title: 'change (95 %)', align: 'right' },
      { title: '', align: 'left' },
    ],
    shownMeasures(check).map((measure) => [
      figureTitle(measure),
      measure.usual === null ? '–' : short(figureText(measure.usual, measure, log)),
      short(figureText(measure.before, measure, log)),
      short(figureText(measure.after, measure, log)),
      short(changeText(measure, measure, log)),
      stateText(measure),
    ]),
  );
}

/** Of the probes only those that the verdict rests on, else the one that stood out most; all of them are in --json. */
function shownMeasures({ measures, judged }: RepairCheck): RepairMeasure[] {
  const offsets = measures.filter(({ id }) => id === 'offset');
  const worst = offsets.reduce<RepairMeasure | null>(
    (most, one) => (most === null || one.trouble > most.trouble ? one : most),
    null,
  );
  return measures.filter(
    (one) => judged.includes(one) || one === worst || (one.id !== 'air' && one.id !== 'offset'),
  );
}

function short(text: string): string {
  return text.replace(/ minutes?/g, ' min').replace(/ starts an hour/g, '/h');
}

function stateText({ state, relapsed }: RepairMeasure): string {
  if (relapsed) return 'came back';
  return state ?? '';
}
