import { textColumns } from '../terminal/columns.ts';
import type { Paint } from '../terminal/paint.ts';
import { hang, indented } from '../terminal/wrap.ts';
import { visibleText } from '../visible-text.ts';
import type { RepairDocument } from './repair-document.ts';

/** Did the repair hold, for a person at a terminal. */
export function repairReport(repair: RepairDocument, paint: Paint): string {
  const paragraph = (text: string): string[] => indented(visibleText(text), 0, paint.width);
  const sections = [
    [paint.bold(visibleText(repair.title))],
    paragraph(repair.summary).map((line) => paint.bold(line)),
    paragraph(repair.windows.summary),
    measureLines(repair),
    [
      paint.bold('Everything back on?'),
      ...repair.backOn.flatMap((line) => hang('-', visibleText(line), 2, 2, paint.width)),
    ],
    paragraph(repair.notice),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

function measureLines({ measures }: RepairDocument): string[] {
  if (measures.length === 0) return [];
  return textColumns(
    [
      { title: 'measure', align: 'left' },
      { title: 'usual', align: 'right' },
      { title: 'before', align: 'right' },
      { title: 'after', align: 'right' },
      { title: 'change (95 %)', align: 'right' },
      { title: '', align: 'left' },
    ],
    measures
      .filter(({ shown }) => shown)
      .map(({ title, words: { usual, before, after, change, state } }) => [
        ...[title, usual, before, after, change, state],
      ]),
  );
}
