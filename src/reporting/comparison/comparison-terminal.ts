import type { ComparedHistories, ComparedPlace } from '../../comparison/compare-histories.ts';
import type { SisterComparison } from '../../comparison/compare-sisters.ts';
import type { Log } from '../../model/log.ts';
import { airNotFood } from '../air-not-food.ts';
import { changeText, figureText, figureTitle } from '../figure-text.ts';
import { spanText } from '../local-time.ts';
import { circuitTitle } from '../report-order.ts';
import { textColumns } from '../terminal/columns.ts';
import type { Paint } from '../terminal/paint.ts';
import { indented } from '../terminal/wrap.ts';
import { visibleText } from '../visible-text.ts';

const short = (text: string): string => text.replace(/ minutes?/g, ' min').replace(/ starts an hour/g, '/h');

/** What changed from one history to the other, the largest changes first. */
export function comparisonReport(compared: ComparedHistories, before: Log, after: Log, paint: Paint): string {
  const changed = compared.places.filter(({ figures }) => figures.some((figure) => figure.changed));
  const same = compared.places.filter((place) => !changed.includes(place)).map(({ id }) => id);
  const heading = `${spanText(after)} against ${spanText(before)}`;
  const sections = [
    [paint.bold(visibleText(after.site)), heading],
    changed.length === 0
      ? indented('Nothing changed by more than days differ, and by enough to matter.', 0, paint.width)
      : [],
    ...changed.map((place) => placeLines(place, after, paint)),
    same.length === 0 ? [] : indented(visibleText(`As before: ${same.join(', ')}.`), 0, paint.width),
    onlyLines(compared, paint),
    indented(
      'Compared at the same hours of the day, in settled air; 95 % intervals, wider where days resemble each other. Weather and trade of the two spans may differ: a change that all circuits share is seldom the fault of one.',
      0,
      paint.width,
    ),
    indented(airNotFood, 0, paint.width),
  ];
  return joined(sections);
}

function placeLines({ kind, id, figures }: ComparedPlace, log: Log, paint: Paint): string[] {
  const title = kind === 'circuit' ? circuitTitle(log, id) : `Suction group ${id}`;
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
        .map((figure) => [
          figureTitle(figure),
          short(figureText(figure.before, figure, log)),
          short(figureText(figure.after, figure, log)),
          short(changeText(figure, figure, log)),
        ]),
    ),
  ];
}

function onlyLines({ onlyBefore, onlyAfter }: ComparedHistories, paint: Paint): string[] {
  return [
    ...(onlyBefore.length === 0 ? [] : [`Only in the earlier export: ${onlyBefore.join(', ')}.`]),
    ...(onlyAfter.length === 0 ? [] : [`Only in the later export: ${onlyAfter.join(', ')}.`]),
  ].flatMap((line) => indented(visibleText(line), 0, paint.width));
}

/** A circuit beside its sisters. */
export function sistersReport(compared: SisterComparison, log: Log, paint: Paint): string {
  const { circuit, sisters, figures } = compared;
  const outside = figures.filter((figure) => figure.outside >= 1);
  const sentence =
    outside.length === 0
      ? `${circuit} stands among its sisters in everything that is followed.`
      : `${circuit} stands outside its sisters in: ${outside.map(figureTitleOf).join(', ')}.`;
  return joined([
    [paint.bold(visibleText(circuitTitle(log, circuit)))],
    indented(visibleText(`${sentence} Sisters: ${sisters.join(', ')}.`), 0, paint.width),
    textColumns(
      [
        { title: '', align: 'left' },
        { title: circuit, align: 'right' },
        { title: 'sisters', align: 'left' },
        { title: '', align: 'left' },
      ],
      figures.map((figure) => [
        figureTitleOf(figure),
        short(figureText(figure.own, figure, log)),
        short(`${figureText(figure.low, figure, log)} to ${figureText(figure.high, figure, log)}`),
        figure.outside >= 1 ? 'outside' : '',
      ]),
    ),
    indented(airNotFood, 0, paint.width),
  ]);
}

const figureTitleOf = ({ id }: Pick<SisterComparison['figures'][number], 'id'>): string =>
  figureTitle({ id, point: null });

function joined(sections: readonly (readonly string[])[]): string {
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}
