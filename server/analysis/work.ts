import type { MessagePort } from 'node:worker_threads';
import type { ProblemCode } from '../problem.ts';
import type { StoredFiles } from './task.ts';

/** What is made of a stored upload only when somebody asks for it. */
export type Work =
  | { readonly kind: 'month' /** `2026-09`, or `all` for the whole export */; readonly month: string }
  /** `serviced` as the user wrote it, on the site's clock. */
  | { readonly kind: 'repair'; readonly circuit: string; readonly serviced: string }
  /** Against another stored export, whichever of the two is the earlier. */
  | { readonly kind: 'comparison'; readonly against: string };

/** What a worker thread is given. */
export interface WorkTask extends StoredFiles {
  readonly work: Work;
  /** The other export of a comparison. */
  readonly against: StoredFiles | null;
  readonly progress: MessagePort;
}

/** The body of the answer, or a refusal: an error would lose its code on its way out of the thread. */
export type WorkOutcome =
  | { readonly made: string }
  | { readonly refusal: { readonly code: ProblemCode; readonly message: string | null } };
