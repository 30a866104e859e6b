/** One thing that was guessed: where it stands in the site file, how sure it is, and why. */
export interface GuessNote {
  /** Keys of the site file, lists by the id of their entry: `circuits`, `M01`, `defrost`, `status`. */
  readonly path: readonly string[];
  /** 0 to 1. */
  readonly confidence: number;
  readonly because: string;
}

/** Below this a guess is asked for. */
export const sureEnough = 0.75;
