import type { Evidence } from '../model/evidence.ts';
import type { CircuitSignals, GroupSignals } from '../signals/types.ts';
import type { BeyondRack } from './beyond-rack.ts';

/** What a trouble is about; each has its own table of hypotheses. */
export type TroubleScope =
  | 'one-probe'
  | 'dead-probe'
  | 'whole-circuit'
  | 'defrost'
  | 'cycling'
  | 'superheat'
  | 'left-off'
  | 'rack'
  | 'record';

/** All evidence of one and the same trouble; `lead` is the one that says most of it. */
export interface Trouble {
  readonly scope: TroubleScope;
  readonly lead: Evidence;
  /** Lead included. */
  readonly evidence: readonly Evidence[];
  readonly circuit: CircuitSignals | null;
  readonly group: GroupSignals | null;
  /** Circuits whose own flags it stands for. */
  readonly covers: readonly string[];
  /** Of a circuit beside a rack that warms it: by how much more than that rack can. */
  readonly beyondRack?: BeyondRack | null;
}

/** Named features of all its evidence; where two name the same one the lead's stands. */
export function featuresOf(trouble: Trouble): { [name: string]: number } {
  const others = trouble.evidence.filter((one) => one !== trouble.lead);
  return Object.assign({}, ...others.map((one) => one.features), trouble.lead.features);
}

/** True when two pieces of evidence can be about the same stretch of time. */
export function overlap(first: Evidence, second: Evidence, slackMs: number): boolean {
  const firstEnd = first.end ?? Number.POSITIVE_INFINITY;
  const secondEnd = second.end ?? Number.POSITIVE_INFINITY;
  return first.onset <= secondEnd + slackMs && second.onset <= firstEnd + slackMs;
}
