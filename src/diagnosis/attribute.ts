import type { CauseId, FindingKind, Origin } from '../model/finding.ts';
import { directJudgement } from './direct-causes.ts';
import type { Judgement, WeighedCause } from './judgement.ts';
import { unknownPlant, type Weighed, weigh } from './naive-bayes.ts';
import { oneProbeCauses, oneProbeFeatures } from './one-probe-causes.ts';
import { featuresOf, type Trouble } from './trouble.ts';
import { wholeCircuitCauses, wholeCircuitFeatures } from './whole-circuit-causes.ts';

/** Causes less likely than this are not worth a line. */
const leastLikelihood = 0.04;
const mostCauses = 4;

/** Ice and too little liquid warm a circuit alike: without superheat air data cannot be sure of either. */
const unknownWithoutSuperheat = 0.25;

/** Decides whose fault a trouble is, from all its evidence. */
export function attribute(trouble: Trouble): Judgement {
  const features = featuresOf(trouble);
  const { shape } = trouble.lead;
  if (trouble.scope === 'one-probe') {
    if (shape === 'constant') return habit();
    return fromWeights(weigh(oneProbeCauses, oneProbeFeatures(features, shape)), (origin) =>
      origin === 'case' && shape === 'creep' && (features.shift ?? features.rise ?? 0) > 0
        ? 'upward-drift'
        : 'probe-disagreement',
    );
  }
  if (trouble.scope === 'whole-circuit' && shape !== 'trading-hours') {
    return fromWeights(
      weigh(
        wholeCircuitCauses,
        wholeCircuitFeatures(features, shape),
        features.superheatRise === undefined ? unknownWithoutSuperheat : unknownPlant,
      ),
      () => 'upward-drift',
    );
  }
  return directJudgement(trouble, features);
}

function habit(): Judgement {
  return {
    kind: 'probe-disagreement',
    origin: 'record',
    originLikelihood: 0.8,
    causes: [
      { cause: 'normal-variation', likelihood: 0.7 },
      { cause: 'probe-offset', likelihood: 0.2 },
    ],
  };
}

/** The likeliest origin by the sum of its causes; the causes of all origins, likeliest first. */
function fromWeights(weighed: readonly Weighed[], kindFor: (origin: Origin) => FindingKind): Judgement {
  const byOrigin = new Map<Origin, number>();
  for (const { hypothesis, likelihood } of weighed) {
    byOrigin.set(hypothesis.origin, (byOrigin.get(hypothesis.origin) ?? 0) + likelihood);
  }
  const [origin, originLikelihood] = [...byOrigin].reduce((a, b) => (b[1] > a[1] ? b : a));
  return {
    kind: kindFor(origin),
    origin,
    originLikelihood,
    causes: byCause(weighed)
      .filter((one, i) => i === 0 || one.likelihood >= leastLikelihood)
      .slice(0, mostCauses),
  };
}

/** One cause a line, likeliest first: what stands in the table in several forms is told by its likeliest. */
function byCause(weighed: readonly Weighed[]): WeighedCause[] {
  const forms = new Map<CauseId, Weighed[]>();
  for (const one of weighed) {
    const { cause } = one.hypothesis;
    forms.set(cause, [...(forms.get(cause) ?? []), one]);
  }
  return [...forms]
    .map(([cause, [likeliest, ...others]]) => ({
      cause,
      likelihood: others.reduce((sum, one) => sum + one.likelihood, likeliest!.likelihood),
      leanings: likeliest!.leanings,
    }))
    .sort((a, b) => b.likelihood - a.likelihood);
}
