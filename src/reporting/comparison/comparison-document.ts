import type { ComparedFigure, ComparedHistories, ComparedPlace } from '../../comparison/compare-histories.ts';
import type { FigureId } from '../../figures/figure.ts';
import type { Log } from '../../model/log.ts';
import { localTimestamp } from '../../units/display.ts';
import { airNotFood } from '../air-not-food.ts';
import { changeText, figureText, figureTitle, shortText } from '../figure-text.ts';
import { endOf, spanText } from '../local-time.ts';
import { circuitTitle } from '../report-order.ts';

/** One figure in both histories; values in inside units with their UCUM code, words in the site's units. */
export interface ComparedFigureDocument {
  readonly name: FigureId;
  readonly point: string | null;
  readonly title: string;
  readonly unit: string;
  readonly before: number;
  readonly after: number;
  readonly difference: number;
  readonly low: number;
  readonly high: number;
  readonly changed: boolean;
  readonly words: { readonly before: string; readonly after: string; readonly change: string };
}

export interface ComparedPlaceDocument {
  readonly kind: ComparedPlace['kind'];
  readonly id: string;
  readonly title: string;
  readonly changed: boolean;
  /** Those that changed first, the largest change first. */
  readonly figures: readonly ComparedFigureDocument[];
}

interface SpanDocument {
  readonly start: string;
  readonly end: string;
}

/** Two histories of one site: what `rimelog compare --json` writes, the terminal says and the page shows. */
export interface ComparisonDocument {
  readonly format: 'rimelog-compare/1';
  readonly site: string;
  readonly before: SpanDocument;
  readonly after: SpanDocument;
  /** `1 Oct to 31 Oct 2026 against 1 Sep to 30 Sep 2026`. */
  readonly heading: string;
  /** What it comes to, in a sentence. */
  readonly summary: string;
  /** The places with the largest changes first. */
  readonly places: readonly ComparedPlaceDocument[];
  /** What did not change, and which circuits only one of the two has. */
  readonly remarks: readonly string[];
  /** How it was compared, and what it cannot say. */
  readonly method: string;
  readonly notice: string;
}

const method =
  'Compared at the same hours of the day, in settled air; 95 % intervals, wider where days resemble each other. Weather and trade of the two spans may differ: a change that all circuits share is seldom the fault of one.';

export function comparisonDocument(compared: ComparedHistories, before: Log, after: Log): ComparisonDocument {
  const places = compared.places.map((place) => placeDocument(place, after));
  const changed = places.filter((place) => place.changed);
  return {
    format: 'rimelog-compare/1',
    site: after.site,
    before: spanOf(before),
    after: spanOf(after),
    heading: `${spanText(after)} against ${spanText(before)}`,
    summary: `${strangers(before, after)}${
      changed.length === 0
        ? 'Nothing changed by more than it does from day to day, and by enough to matter.'
        : `${changed.length} of ${places.length} circuits and suction groups changed by more than they do from day to day; the largest change first.`
    }`,
    places,
    remarks: [
      ...overlapping(before, after),
      ...listed('As before', changed.length === places.length ? [] : places.filter((p) => !p.changed)),
      ...listed('Only in the earlier export', compared.onlyBefore),
      ...listed('Only in the later export', compared.onlyAfter),
    ],
    method,
    notice: airNotFood,
  };
}

function placeDocument({ kind, id, figures }: ComparedPlace, log: Log): ComparedPlaceDocument {
  return {
    kind,
    id,
    title: kind === 'circuit' ? circuitTitle(log, id) : `Suction group ${id}`,
    changed: figures.some(({ changed }) => changed),
    figures: figures.map((figure) => figureDocument(figure, log)),
  };
}

function figureDocument(figure: ComparedFigure, log: Log): ComparedFigureDocument {
  const { id, point, unit, before, after, difference, low, high, changed } = figure;
  return {
    name: id,
    point,
    title: figureTitle(figure),
    unit,
    before,
    after,
    difference,
    low,
    high,
    changed,
    words: {
      before: shortText(figureText(before, figure, log)),
      after: shortText(figureText(after, figure, log)),
      change: shortText(changeText(figure, figure, log)),
    },
  };
}

const spanOf = (log: Log): SpanDocument => ({
  start: localTimestamp(log.grid.startMs, log)!,
  end: localTimestamp(endOf(log), log)!,
});

function listed(title: string, some: readonly (string | { readonly id: string })[]): string[] {
  const ids = some.map((one) => (typeof one === 'string' ? one : one.id));
  return ids.length === 0 ? [] : [`${title}: ${ids.join(', ')}.`];
}

/** Circuits of two stores may bear the same names and be nothing to each other. */
function strangers({ site: one }: Log, { site: other }: Log): string {
  return one === other || one === '' || other === ''
    ? ''
    : `By their names these are two sites, ${one} and ${other}: circuits are taken for each other by their ids alone. `;
}

/** Days that both hold are compared with themselves. */
function overlapping(before: Log, after: Log): string[] {
  return endOf(before) < after.grid.startMs
    ? []
    : ['The two spans overlap: on the days that both hold nothing can differ.'];
}
