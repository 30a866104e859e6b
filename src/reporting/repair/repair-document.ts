import type { FigureId } from '../../figures/figure.ts';
import type { Log } from '../../model/log.ts';
import type { LeftOpen } from '../../repair-check/back-on.ts';
import type { RepairCheck, RepairVerdict } from '../../repair-check/check-repair.ts';
import type { MeasureState, RepairMeasure } from '../../repair-check/judge-figure.ts';
import { localTimestamp } from '../../units/display.ts';
import { airNotFood } from '../air-not-food.ts';
import { changeText, figureText, figureTitle, shortText } from '../figure-text.ts';
import { circuitTitle } from '../report-order.ts';
import { leftOpenLines, leftOpenText, verdictText, windowsText } from './repair-words.ts';

/** One figure before and after; values in inside units with their UCUM code, words in the site's units. */
export interface MeasureDocument {
  readonly name: FigureId;
  readonly point: string | null;
  readonly title: string;
  readonly unit: string;
  readonly before: number;
  readonly after: number;
  readonly difference: number;
  readonly low: number;
  readonly high: number;
  readonly usual: number | null;
  readonly usualFrom: 'own-past' | 'sound-circuit' | null;
  /** Share of the departure that is gone; null without trouble before the service. */
  readonly share: number | null;
  readonly state: MeasureState | 'came-back' | 'new' | null;
  /** The verdict rests on it. */
  readonly judged: boolean;
  /** It stands in the table that people read: of the probes only those that stood out. */
  readonly shown: boolean;
  /** The change with its interval, in words. */
  readonly display: string;
  readonly words: {
    readonly usual: string;
    readonly before: string;
    readonly after: string;
    readonly change: string;
    readonly state: string;
  };
}

/** Whether a repair held: what `rimelog verify --json` writes, the terminal says and the page shows. */
export interface RepairDocument {
  readonly format: 'rimelog-verify/1';
  readonly site: string;
  readonly circuit: string;
  readonly title: string;
  readonly serviced: string;
  readonly verdict: RepairVerdict;
  readonly summary: string;
  readonly relapsed: boolean;
  readonly windows: {
    readonly before: { readonly start: string; readonly end: string };
    readonly after: { readonly start: string; readonly end: string };
    readonly defrostsAfter: number;
    readonly hoursAfter: number;
    readonly summary: string;
  };
  readonly measures: readonly MeasureDocument[];
  readonly leftOpen: readonly {
    readonly what: LeftOpen['what'];
    readonly circuit: string;
    readonly since: string;
    readonly summary: string;
  }[];
  /** A line for each thing left open, or one that says that nothing is. */
  readonly backOn: readonly string[];
  readonly notice: string;
}

export function repairDocument(check: RepairCheck, log: Log): RepairDocument {
  const { windows } = check;
  const shown = shownMeasures(check);
  const at = (time: number): string => localTimestamp(time, log)!;
  return {
    format: 'rimelog-verify/1',
    site: log.site,
    circuit: check.circuit,
    title: circuitTitle(log, check.circuit),
    serviced: at(check.serviced),
    verdict: check.verdict,
    summary: verdictText(check, log),
    relapsed: check.relapsed,
    windows: {
      before: { start: at(windows.beforeFrom), end: at(check.serviced) },
      after: { start: at(windows.afterFrom), end: at(windows.afterTo) },
      defrostsAfter: windows.defrostsAfter,
      hoursAfter: windows.hoursAfter,
      summary: windowsText(check, log),
    },
    measures: check.measures.map((measure) => ({
      ...measureDocument(measure, log),
      judged: check.judged.includes(measure),
      shown: shown.includes(measure),
    })),
    leftOpen: check.leftOpen.map((open) => ({
      what: open.what,
      circuit: open.circuit,
      since: at(open.since),
      summary: leftOpenText(open, log),
    })),
    backOn: leftOpenLines(check, log),
    notice: airNotFood,
  };
}

const stateWords = {
  recovered: 'recovered',
  partly: 'partly back',
  unchanged: 'unchanged',
  'came-back': 'back again',
  new: 'new',
} as const;

function measureDocument(measure: RepairMeasure, log: Log): Omit<MeasureDocument, 'judged' | 'shown'> {
  const { id, point, unit, before, after, difference, low, high, usual, usualFrom, gone } = measure;
  const state = measure.relapsed ? 'came-back' : measure.newTrouble > 0 ? 'new' : measure.state;
  const inWords = (value: number): string => shortText(figureText(value, measure, log));
  const change = changeText(measure, measure, log);
  return {
    name: id,
    point,
    title: figureTitle(measure),
    unit,
    before,
    after,
    difference,
    low,
    high,
    usual,
    usualFrom,
    share: gone?.share ?? null,
    state,
    display: change,
    words: {
      usual: usual === null ? '–' : inWords(usual),
      before: inWords(before),
      after: inWords(after),
      change: shortText(change),
      state: state === null ? '' : stateWords[state],
    },
  };
}

/** Of the probes only those that the verdict rests on or that are in new trouble, else the one that stood out most. */
function shownMeasures({ measures, judged }: RepairCheck): RepairMeasure[] {
  const offsets = measures.filter(({ id }) => id === 'offset');
  const worst = offsets.reduce<RepairMeasure | null>(
    (most, one) => (most === null || one.trouble > most.trouble ? one : most),
    null,
  );
  return measures.filter(
    (one) =>
      judged.includes(one) ||
      one === worst ||
      one.newTrouble > 0 ||
      (one.id !== 'air' && one.id !== 'offset'),
  );
}
