export interface SurvivalStep {
  readonly time: number;
  readonly atRisk: number;
  readonly events: number;
  /** Share that lasts longer than `time`. */
  readonly survival: number;
}

/**
 * How long until something happens where some were only watched for a while: the product limit of Kaplan and Meier, J. Am.
 * Stat. Assoc. 53 (1958) 457. `happened[i]` false: watched until `times[i]`, nothing happened. Ties of both count the
 * watched ones as still at risk. One step for each time with an event; times that are not finite are left out.
 */
export function kaplanMeier(times: ArrayLike<number>, happened: ArrayLike<boolean>): SurvivalStep[] {
  const order = Array.from(times, (_, i) => i)
    .filter((i) => Number.isFinite(times[i]!))
    .sort((a, b) => times[a]! - times[b]!);
  const steps: SurvivalStep[] = [];
  let survival = 1;
  for (let from = 0; from < order.length; ) {
    const time = times[order[from]!]!;
    let to = from;
    let events = 0;
    while (to < order.length && times[order[to]!]! === time) if (happened[order[to++]!]) events++;
    const atRisk = order.length - from;
    if (events > 0) {
      survival *= 1 - events / atRisk;
      steps.push({ time, atRisk, events, survival });
    }
    from = to;
  }
  return steps;
}

/** Time by which half have happened; NaN when fewer than half were seen to. */
export function medianSurvival(steps: readonly SurvivalStep[]): number {
  return steps.find((step) => step.survival <= 0.5 + 1e-12)?.time ?? Number.NaN;
}
