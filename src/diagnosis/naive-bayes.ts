import type { CauseId, Origin } from '../model/finding.ts';

/** What a feature looks like under one cause: a normal bump on a low floor, or how often a yes (1; in between where it is itself uncertain) is expected. */
export type Expected = { readonly mean: number; readonly deviation: number } | { readonly share: number };

export const near = (mean: number, deviation: number): Expected => ({ mean, deviation });
export const yes = (share: number): Expected => ({ share });

export interface Hypothesis {
  readonly cause: CauseId;
  readonly origin: Origin;
  readonly prior: number;
  readonly features: Readonly<{ [feature: string]: Expected }>;
}

/** Most measured features come from the same few defrosts: each counts for this much of an independent one. */
const correlatedWeight = 0.75;
/** Chance that a feature is spoiled by something not modelled, spread over this many units. */
const spoiled = 0.1;
const spoiledWidth = 6;

/** Chance that the plant is one of which the table knows nothing: then only the priors stand. */
export const unknownPlant = 0.1;

export interface Weighed {
  readonly hypothesis: Hypothesis;
  readonly likelihood: number;
  /** For each feature that counted: log likelihood under this cause minus that under the others, above 0 where it favours it. */
  readonly leanings: Readonly<{ [feature: string]: number }>;
}

/**
 * Naive Bayes: log prior + Σ log share + Σ weight · log( (1 − ε)·N(x; mean, deviation² + error²) + ε / width ), normalised over
 * the hypotheses, mixed with the priors at the chance of an unknown plant; likeliest first. A feature counts only when the log gave it and every hypothesis speaks of it;
 * `<name>Error`, where given, widens its bump.
 */
export function weigh(
  hypotheses: readonly Hypothesis[],
  features: Readonly<{ [name: string]: number }>,
  unknown = unknownPlant,
): Weighed[] {
  const shared = Object.keys(hypotheses[0]?.features ?? {}).filter(
    (name) => Number.isFinite(features[name]) && hypotheses.every((one) => one.features[name] !== undefined),
  );
  const logs = hypotheses.map((hypothesis) =>
    shared.map((name) =>
      logLikelihood(features[name]!, hypothesis.features[name]!, features[`${name}Error`] ?? 0),
    ),
  );
  const scores = hypotheses.map(
    ({ prior }, h) => Math.log(prior) + logs[h]!.reduce((sum, one) => sum + one, 0),
  );
  const best = Math.max(...scores);
  const weights = scores.map((score) => Math.exp(score - best));
  const sum = weights.reduce((a, b) => a + b, 0);
  const priors = hypotheses.reduce((total, { prior }) => total + prior, 0);
  return hypotheses
    .map((hypothesis, h) => ({
      hypothesis,
      likelihood: (1 - unknown) * (weights[h]! / sum) + unknown * (hypothesis.prior / priors),
      leanings: Object.fromEntries(shared.map((name, f) => [name, leaning(hypotheses, logs, h, f)])),
    }))
    .sort((a, b) => b.likelihood - a.likelihood);
}

/** How much a feature speaks for one hypothesis against all others together, by their priors. */
function leaning(
  hypotheses: readonly Hypothesis[],
  logs: readonly (readonly number[])[],
  h: number,
  feature: number,
): number {
  let weight = 0;
  let others = 0;
  hypotheses.forEach(({ prior }, other) => {
    if (other === h) return;
    weight += prior;
    others += prior * Math.exp(logs[other]![feature]!);
  });
  return logs[h]![feature]! - Math.log(others / weight);
}

function logLikelihood(value: number, expected: Expected, error: number): number {
  if ('share' in expected) return Math.log(value * expected.share + (1 - value) * (1 - expected.share));
  const variance = expected.deviation * expected.deviation + error * error;
  const bump = Math.exp(-((value - expected.mean) ** 2) / (2 * variance)) / Math.sqrt(2 * Math.PI * variance);
  return correlatedWeight * Math.log((1 - spoiled) * bump + spoiled / spoiledWidth);
}
