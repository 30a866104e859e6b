import type { FigureId } from '../figures/figure.ts';

/** Air needs this long after a visit, with doors and defrosts, before it is judged. Common practice, no source. */
export const settleHours = 4;
/** A repair is judged on this many complete defrosts and this long a stretch; without known defrosts on the longer one. */
export const fewestDefrosts = 3;
export const fewestHours = 24;
export const fewestHoursWithoutDefrosts = 72;
/** The last days before the visit show the fault. */
export const mostDaysBefore = 3;
/** A repair is watched for so long (drains block again); what is judged are the last days of that. */
export const watchDays = 14;
export const mostDaysAfter = 5;
/** What the first days after the visit were like tells a relapse from a repair that never worked. */
export const earlyDays = 2;
/** Days of their own past that tell what was usual before the fault. */
export const fewestReferenceDays = 2;

/** From which departure on a figure counts as trouble, in its unit, and against what where its own past is not known. */
export interface TroubleGate {
  readonly gate: number;
  /** Trouble only above the usual level, or on either side of it. */
  readonly side: 'above' | 'either';
  /** What a sound circuit shows, and how far from it is trouble; null where only its own past can tell. */
  readonly sound: { readonly value: number; readonly gate: number } | null;
}

/** Common practice, no source; 1.7 K is the spread that healthy neighbours keep within (src/signals). */
export const troubleGates: Readonly<Partial<Record<FigureId, TroubleGate>>> = {
  level: { gate: 0.8, side: 'above', sound: { value: 0, gate: 1.4 } },
  offset: { gate: 1.1, side: 'either', sound: { value: 0, gate: 1.7 } },
  recovery: { gate: 12, side: 'above', sound: null },
  duty: { gate: 0.15, side: 'above', sound: null },
  'valve-starts': { gate: 3, side: 'above', sound: null },
  superheat: { gate: 3, side: 'either', sound: null },
};

/** Trouble beyond this many gates is as bad as any: one figure with a long tail does not silence the others. */
export const mostTrouble = 5;
/** A measure has recovered when less than this share of its departure is left, and in any case within its gate. */
export const restShare = 0.25;
/** … and has not changed when less than this share of it is gone. */
export const leastShare = 0.25;
/** A relapse: at least this share was gone in the first days, and less than half of that is at the end. */
export const relapsedFrom = 0.5;
/** Figures whose departure is at least this share of the largest one (in gates) are judged with it. */
export const judgedShare = 0.5;
