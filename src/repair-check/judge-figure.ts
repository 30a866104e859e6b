import type { Figure } from '../figures/figure.ts';
import {
  type BlockRange,
  type MatchedChange,
  matchedChange,
  meanAtHoursOf,
} from '../figures/matched-change.ts';
import {
  leastShare,
  mostTrouble,
  relapsedFrom,
  restShare,
  type TroubleGate,
  troubleGates,
} from './settings.ts';

export type MeasureState = 'recovered' | 'partly' | 'unchanged';

/** One figure before and after the visit. */
export interface RepairMeasure extends MatchedChange {
  readonly id: Figure['id'];
  readonly point: string | null;
  readonly unit: Figure['unit'];
  /** What was usual before the fault, or what a sound circuit shows; null where neither is known. */
  readonly usual: number | null;
  readonly usualFrom: 'own-past' | 'sound-circuit' | null;
  /** Departure from usual before the visit, in gates; below 1 it is no trouble. */
  readonly trouble: number;
  /** Share of the departure that is gone, with the interval of the difference; null without trouble. */
  readonly gone: { readonly share: number; readonly low: number; readonly high: number } | null;
  readonly state: MeasureState | null;
  /** It stands at what is usual, whether or not the change is sure; null without trouble. */
  readonly isBack: boolean | null;
  /** It had recovered, and at the end of the export it is back. */
  readonly relapsed: boolean;
  /** Its departure from usual after the visit, in gates, where it was no trouble before and has surely grown; else 0. */
  readonly newTrouble: number;
}

export interface Windows {
  readonly before: BlockRange;
  readonly after: BlockRange;
  readonly early: BlockRange | null;
  /** Blocks of the circuit's own quiet past, or null. */
  readonly reference: BlockRange | null;
}

/** Null where a side of the comparison has too little. */
export function judgeFigure(
  figure: Figure,
  { before, after, early, reference }: Windows,
): RepairMeasure | null {
  const change = matchedChange(figure.values, before, after);
  if (change === null) return null;
  const { id, point, unit } = figure;
  const own = reference === null ? Number.NaN : meanAtHoursOf(figure.values, reference, after);
  const gates = troubleGates[id];
  const plain = {
    ...change,
    id,
    point,
    unit,
    gone: null,
    state: null,
    isBack: null,
    relapsed: false,
    newTrouble: 0,
  };
  if (gates === undefined) return { ...plain, usual: orNull(own), usualFrom: ownPast(own), trouble: 0 };
  const against = troubleAgainst(change.before, own, gates);
  if (against === null || against.trouble < 1) {
    return {
      ...plain,
      usual: orNull(own),
      usualFrom: ownPast(own),
      trouble: against?.trouble ?? 0,
      newTrouble: newTrouble(change, own, gates),
    };
  }
  const departure = change.before - against.usual;
  const shares = [-change.low / departure, -change.high / departure].sort((a, b) => a - b);
  const gone = { share: -change.difference / departure, low: shares[0]!, high: shares[1]! };
  const rest = Math.min(against.gate, Math.max(restShare * Math.abs(departure), 0.5 * against.gate));
  const isBack = Math.abs(change.after - against.usual) < rest;
  return {
    ...plain,
    usual: against.usual,
    usualFrom: against.from,
    trouble: Math.min(mostTrouble, against.trouble),
    gone,
    state: stateOf(gone, isBack),
    isBack,
    relapsed:
      early !== null && hasRelapsed(matchedChange(figure.values, before, early), departure, gone.share),
  };
}

interface Trouble {
  readonly usual: number;
  readonly from: 'own-past' | 'sound-circuit';
  readonly gate: number;
  readonly trouble: number;
}

/** Against its own past, else (or where that shows nothing, for a fault may be as old as the export) what is sound. */
function troubleAgainst(before: number, own: number, { gate, side, sound }: TroubleGate): Trouble | null {
  const size = (away: number) => (side === 'above' ? away : Math.abs(away));
  const past: Trouble | null = Number.isNaN(own)
    ? null
    : { usual: own, from: 'own-past', gate, trouble: size(before - own) / gate };
  if (past !== null && past.trouble >= 1) return past;
  if (sound === null) return past;
  const trouble = size(before - sound.value) / sound.gate;
  return trouble >= 1 ? { usual: sound.value, from: 'sound-circuit', gate: sound.gate, trouble } : past;
}

/** Of a figure that was no trouble before the visit. */
function newTrouble({ after, low, high }: MatchedChange, own: number, gates: TroubleGate): number {
  const isSure = low > 0 || high < 0;
  const since = isSure ? troubleAgainst(after, own, gates) : null;
  return since === null || since.trouble < 1 ? 0 : since.trouble;
}

function stateOf(gone: { share: number; low: number }, isBack: boolean): MeasureState {
  if (gone.low <= 0 || gone.share < leastShare) return 'unchanged';
  return isBack ? 'recovered' : 'partly';
}

/** The first days after the visit were surely better, and most of that is lost again. */
function hasRelapsed(early: MatchedChange | null, departure: number, share: number): boolean {
  if (early === null) return false;
  const gone = -early.difference / departure;
  const isSure = early.low > 0 || early.high < 0;
  return isSure && gone >= relapsedFrom && share < gone / 2;
}

const orNull = (value: number): number | null => (Number.isNaN(value) ? null : value);
const ownPast = (value: number): 'own-past' | null => (Number.isNaN(value) ? null : 'own-past');
