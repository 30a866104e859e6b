import { textColumns } from '../terminal/columns.ts';
import type { Paint } from '../terminal/paint.ts';
import { indented } from '../terminal/wrap.ts';
import { visibleText } from '../visible-text.ts';
import type { ComparedPlaceDocument, ComparisonDocument } from './comparison-document.ts';
import type { SistersDocument } from './sisters-document.ts';

/** What changed from one history to the other, the largest changes first. */
export function comparisonReport(compared: ComparisonDocument, paint: Paint): string {
  const paragraph = (text: string): string[] => indented(visibleText(text), 0, paint.width);
  return joined([
    [...(compared.site === '' ? [] : [paint.bold(visibleText(compared.site))]), compared.heading],
    paragraph(compared.summary),
    ...compared.places.filter(({ changed }) => changed).map((place) => placeLines(place, paint)),
    compared.remarks.flatMap(paragraph),
    paragraph(compared.method),
    paragraph(compared.notice),
  ]);
}

function placeLines({ title, figures }: ComparedPlaceDocument, paint: Paint): string[] {
  return [
    paint.bold(visibleText(title)),
    ...textColumns(
      [
        { title: '', align: 'left' },
        { title: 'before', align: 'right' },
        { title: 'after', align: 'right' },
        { title: 'change (95 %)', align: 'right' },
      ],
      figures
        .filter(({ changed }) => changed)
        .map((figure) => [figure.title, figure.words.before, figure.words.after, figure.words.change]),
    ),
  ];
}

/** A circuit beside its sisters. */
export function sistersReport(compared: SistersDocument, paint: Paint): string {
  return joined([
    [paint.bold(visibleText(compared.title))],
    indented(visibleText(compared.summary), 0, paint.width),
    textColumns(
      [
        { title: '', align: 'left' },
        { title: compared.circuit, align: 'right' },
        { title: 'sisters', align: 'left' },
        { title: '', align: 'left' },
      ],
      compared.figures.map(({ title, words, outside }) => [
        ...[title, words.own, words.sisters, outside ? 'outside' : ''],
      ]),
    ),
    indented(compared.notice, 0, paint.width),
  ]);
}

function joined(sections: readonly (readonly string[])[]): string {
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}
