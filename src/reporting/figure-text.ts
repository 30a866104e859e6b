import type { Figure, FigureId } from '../figures/figure.ts';
import { figureMeanings } from '../figures/figure.ts';
import type { Measure } from '../model/evidence.ts';
import type { Log } from '../model/log.ts';
import { formatShare } from '../units/display.ts';
import { formatNumber } from '../units/format-number.ts';
import { displayMeasure } from './display-measure.ts';

type SiteUnits = Pick<Log, 'units' | 'atmosphere'>;

/** `M01 air A against the others`. */
export function figureTitle({ id, point }: Pick<Figure, 'id' | 'point'>): string {
  const { title } = figureMeanings[id];
  return point === null ? title : `${point} ${title}`;
}

const startsText = (anHour: number): string => formatNumber(anHour, 1);

/** A value of a figure in the site's units. */
export function figureText(
  value: number,
  { id, unit }: Pick<Figure, 'id' | 'unit'>,
  site: SiteUnits,
): string {
  if (unit === '1') return formatShare(value);
  if (unit === '{starts}/h') return `${startsText(value)} starts an hour`;
  return displayMeasure(measureOf(value, null, null, id, unit), site);
}

/** A change of a figure, with its interval where one is known: a change of a level is a difference. */
export function changeText(
  change: { readonly difference: number; readonly low: number; readonly high: number },
  { id, unit }: Pick<Figure, 'id' | 'unit'>,
  site: SiteUnits,
): string {
  const { difference, low, high } = change;
  if (unit === '1') {
    const points = (share: number) => `${Math.round(share * 100)}`;
    return `${points(difference)} points (${points(low)} to ${points(high)})`;
  }
  if (unit === '{starts}/h') {
    return `${startsText(difference)} starts an hour (${startsText(low)} to ${startsText(high)})`;
  }
  if (unit === 'min') {
    const whole = (minutes: number) => formatNumber(minutes, 0);
    return `${whole(difference)} min (${whole(low)} to ${whole(high)})`;
  }
  const differenceUnit = unit === 'Cel' ? 'K' : unit === 'kPa' ? 'kPa{difference}' : unit;
  return displayMeasure(measureOf(difference, low, high, id, differenceUnit), site);
}

/** The same in a column: `12 min`, `3/h`. */
export function shortText(text: string): string {
  return text.replace(/ minutes?/g, ' min').replace(/ starts an hour/g, '/h');
}

function measureOf(
  value: number,
  low: number | null,
  high: number | null,
  name: FigureId,
  unit: string,
): Measure {
  return { name, value, low, high, unit };
}
