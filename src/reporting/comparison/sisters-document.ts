import type { SisterComparison, SisterFigure } from '../../comparison/compare-sisters.ts';
import type { FigureId } from '../../figures/figure.ts';
import type { Log } from '../../model/log.ts';
import { airNotFood } from '../air-not-food.ts';
import { figureText, figureTitle, shortText } from '../figure-text.ts';
import { circuitTitle } from '../report-order.ts';

/** A circuit beside its sisters: what `rimelog compare --circuit --json` writes, the terminal says and the page shows. */
export interface SistersDocument {
  readonly format: 'rimelog-sisters/1';
  readonly site: string;
  readonly circuit: string;
  readonly title: string;
  readonly sisters: readonly string[];
  /** What it comes to, and who the sisters are. */
  readonly summary: string;
  /** Those farthest outside first; values in inside units with their UCUM code, words in the site's units. */
  readonly figures: readonly {
    readonly name: FigureId;
    readonly title: string;
    readonly unit: string;
    readonly own: number;
    readonly sisters: readonly { readonly circuit: string; readonly value: number }[];
    readonly outside: boolean;
    readonly words: { readonly own: string; readonly sisters: string };
  }[];
  readonly notice: string;
}

const titleOf = ({ id }: SisterFigure): string => figureTitle({ id, point: null });

/** Outside by at least one step worth saying. */
const isOutside = ({ outside }: SisterFigure): boolean => outside >= 1;

export function sistersDocument(compared: SisterComparison, log: Log): SistersDocument {
  const { circuit, sisters, figures } = compared;
  const outside = figures.filter(isOutside);
  const sentence =
    figures.length === 0
      ? `${circuit} cannot be set beside its sisters: too few of the last seven days show it, or them, cooling.`
      : outside.length === 0
        ? `${circuit} stands among its sisters in everything that is followed.`
        : `${circuit} stands outside its sisters in: ${outside.map(titleOf).join(', ')}.`;
  return {
    format: 'rimelog-sisters/1',
    site: log.site,
    circuit,
    title: circuitTitle(log, circuit),
    sisters,
    summary: `${sentence} Sisters, over the last seven days: ${sisters.join(', ')}.`,
    figures: figures.map((figure) => ({
      name: figure.id,
      title: titleOf(figure),
      unit: figure.unit,
      own: figure.own,
      sisters: figure.sisters,
      outside: isOutside(figure),
      words: {
        own: shortText(figureText(figure.own, figure, log)),
        sisters: shortText(
          `${figureText(figure.low, figure, log)} to ${figureText(figure.high, figure, log)}`,
        ),
      },
    })),
    notice: airNotFood,
  };
}
