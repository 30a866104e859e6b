import type { CauseId, Origin } from '../model/finding.ts';
import type { Judgement, WeighedCause } from './judgement.ts';
import type { Trouble } from './trouble.ts';

interface Answer {
  readonly origin: Origin;
  readonly causes: readonly (readonly [CauseId, number])[];
}

/** Evidence whose shape already says what it is. Keys are `kind/shape`, or `kind` for every other shape. */
const answers: Readonly<{ [key: string]: Answer }> = {
  'probe-disagreement/stuck': {
    origin: 'probe',
    causes: [
      ['probe-stuck', 0.85],
      ['logging', 0.1],
    ],
  },
  'probe-disagreement/open-or-short': { origin: 'probe', causes: [['probe-open-or-short', 0.92]] },
  'probe-disagreement/silent': {
    origin: 'probe',
    causes: [
      ['probe-open-or-short', 0.75],
      ['logging', 0.2],
    ],
  },
  'probe-disagreement/flutter': {
    origin: 'probe',
    causes: [
      ['probe-noise', 0.85],
      ['probe-open-or-short', 0.1],
    ],
  },
  'probe-disagreement/swapped': {
    origin: 'probe',
    causes: [
      ['probe-swapped', 0.7],
      ['probe-moved', 0.2],
    ],
  },
  'short-cycling': {
    origin: 'control',
    causes: [
      ['tight-differential', 0.55],
      ['compressor-control', 0.3],
    ],
  },
  'defrost-missed': {
    origin: 'defrost',
    causes: [
      ['defrost-schedule', 0.7],
      ['left-off', 0.1],
    ],
  },
  'defrost-recovery': {
    origin: 'defrost',
    causes: [
      ['airflow-or-ice', 0.4],
      ['underfeeding', 0.2],
      ['defrost-heat', 0.15],
      ['drain', 0.1],
    ],
  },
  'rack-pressure': {
    origin: 'rack',
    causes: [
      ['capacity-shortfall', 0.5],
      ['compressor-control', 0.25],
      ['low-charge', 0.1],
    ],
  },
  superheat: {
    origin: 'case',
    causes: [
      ['underfeeding', 0.6],
      ['low-charge', 0.2],
    ],
  },
  'left-off': {
    origin: 'control',
    causes: [
      ['left-off', 0.8],
      ['service-visit', 0.1],
    ],
  },
  'record-quality': { origin: 'record', causes: [['logging', 0.9]] },
};

export function directJudgement(
  trouble: Trouble,
  _features: Readonly<{ [name: string]: number }>,
): Judgement {
  const { kind, shape } = trouble.lead;
  const { origin, causes } = answers[`${kind}/${shape}`] ?? answers[kind]!;
  return {
    kind,
    origin,
    originLikelihood: 0.9,
    causes: causes.map(([cause, likelihood]): WeighedCause => ({ cause, likelihood })),
  };
}
