import type { Diagnosis, Finding, Severity } from '../../model/finding.ts';
import type { ImportReport } from '../../model/import-report.ts';
import type { Log } from '../../model/log.ts';
import type { Signals } from '../../signals/types.ts';
import { localTimestamp } from '../../units/display.ts';
import { moreUrgent, type Stop, visitSheet } from '../../visit/visit-sheet.ts';
import { airNotFood } from '../air-not-food.ts';
import { confidenceText, paceText, toLimitText } from '../finding-facts.ts';
import { noCircuits, siteTitle } from '../headline.ts';
import { dayText, endOf, spanText } from '../local-time.ts';
import { openQuestions } from '../open-questions.ts';
import { causeText, exposureText, stopSummary, stopTitle } from '../visit/visit-words.ts';

/** A place in one of the stores that is worth a stop; its words in the units and on the clock of that store. */
export interface RoundStop {
  readonly store: string;
  /** What was given on the command line for the store. */
  readonly source: string;
  readonly place: string;
  readonly severity: Severity;
  readonly kind: Finding['kind'];
  readonly origin: Finding['origin'];
  readonly summary: string;
  /** RFC 3339. */
  readonly onset: string | null;
  readonly since: string;
  readonly pace: string | null;
  readonly toLimit: string | null;
  readonly confidence: string;
  /** What the air is like at the end of the export, where it was above its limit. */
  readonly now: string | null;
  readonly cause: string | null;
  readonly bring: readonly string[];
  /** What else was found there. */
  readonly others: number;
}

export interface RoundStore {
  readonly store: string;
  readonly source: string;
  readonly span: string;
  /** End of its export, RFC 3339: how old the news is. */
  readonly end: string | null;
  readonly circuits: number;
  readonly stops: number;
  readonly notes: number;
  /** Questions that its export leaves open. */
  readonly open: number;
  /** Why nothing can be said of it, where no circuit was recognised. */
  readonly notJudged: string | null;
}

export interface RoundRefusal {
  readonly source: string;
  readonly message: string;
}

/** Many stores, one list: what `rimelog round --json` writes, the terminal says and the page shows. */
export interface RoundDocument {
  readonly format: 'rimelog-round/1';
  readonly summary: string;
  /** Of all stores, worst first. */
  readonly stops: readonly RoundStop[];
  /** Those with the most urgent stop first, then the quiet ones, by name. */
  readonly stores: readonly RoundStore[];
  readonly unreadable: readonly RoundRefusal[];
  readonly method: string;
  readonly notice: string;
}

/** A store as far as the round needs it; its log may be let go. */
export interface JudgedStore {
  readonly store: RoundStore;
  readonly stops: readonly (RoundStop & Pick<Stop, 'weight'>)[];
}

interface Analysed {
  readonly log: Log;
  readonly report: ImportReport;
  readonly signals: Signals;
  readonly diagnosis: Diagnosis;
}

export function judgedStore({ log, report, signals, diagnosis }: Analysed, source: string): JudgedStore {
  const { stops } = visitSheet(signals, diagnosis);
  const title = siteTitle(log, report);
  return {
    store: {
      store: title,
      source,
      span: spanText(log),
      end: localTimestamp(endOf(log), log),
      circuits: log.circuits.length,
      stops: stops.length,
      notes: diagnosis.findings.filter(({ severity }) => severity === 'note').length,
      open: openQuestions(diagnosis, log).length,
      notJudged: log.circuits.length === 0 ? noCircuits : null,
    },
    stops: stops.map((stop) => ({ store: title, source, ...roundStop(stop, log), weight: stop.weight })),
  };
}

function roundStop(stop: Stop, log: Log): Omit<RoundStop, 'store' | 'source'> {
  const { lead, severity, others, cause } = stop;
  return {
    place: stopTitle(stop, log),
    severity,
    kind: lead.kind,
    origin: lead.origin,
    summary: stopSummary(stop, log),
    onset: localTimestamp(lead.onset, log),
    since: dayText(log, lead.onset),
    pace: paceText(lead, log),
    toLimit: toLimitText(lead, log),
    confidence: confidenceText(lead.confidence),
    now: exposureText(stop, log),
    cause: causeText(stop),
    bring: cause?.bring ?? [],
    others: others.length,
  };
}

const method =
  'Ordered as the sheet of one visit is: what must not wait first, then by exposure in the last day × how fast it goes × how sure it is. Every store is judged from its own export alone, as of its end.';

export function roundDocument(
  judged: readonly JudgedStore[],
  unreadable: readonly RoundRefusal[],
): RoundDocument {
  const stops = judged.flatMap((each) => each.stops).sort(moreUrgent);
  const rank = ({ stops: own }: JudgedStore): number =>
    own.length === 0 ? Number.POSITIVE_INFINITY : stops.indexOf(own.toSorted(moreUrgent)[0]!);
  const stores = judged
    .toSorted((a, b) => compare(rank(a), rank(b)) || compare(a.store.store, b.store.store))
    .map(({ store }) => store);
  return {
    format: 'rimelog-round/1',
    summary: summaryOf(stores, stops, unreadable),
    stops: stops.map(({ weight: _, ...stop }) => stop),
    stores,
    unreadable,
    method,
    notice: airNotFood,
  };
}

function compare<T extends number | string>(a: T, b: T): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`;

function summaryOf(
  stores: readonly RoundStore[],
  stops: readonly RoundStop[],
  unreadable: readonly RoundRefusal[],
): string {
  const acts = stops.filter(({ severity }) => severity === 'act').length;
  const needed = stores.filter((store) => store.stops > 0).length;
  const notJudged = stores.filter((store) => store.notJudged !== null).length;
  const quiet = stores.filter((store) => store.stops === 0 && store.notJudged === null).length;
  const all = count(stores.length + unreadable.length, 'store', 'stores');
  if (needed + quiet === 0) return `${all}: nothing is known of any, for the reasons below.`;
  const places = [
    ...(acts === 0 ? [] : [`${count(acts, 'place needs', 'places need')} work`]),
    ...(stops.length === acts
      ? []
      : [`${count(stops.length - acts, 'place is', 'places are')} to be watched`]),
  ];
  return [
    `${all}:`,
    places.length === 0
      ? 'no place needs a stop;'
      : `${places.join(', ')}, in ${count(needed, 'store', 'stores')};`,
    `${count(quiet, 'store has', 'stores have')} nothing above a note${notJudged + unreadable.length === 0 ? '.' : ';'}`,
    ...(notJudged + unreadable.length === 0
      ? []
      : [`of ${count(notJudged + unreadable.length, 'store', 'stores')} nothing is known, named below.`]),
  ].join(' ');
}
