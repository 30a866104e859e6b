import { median } from '../maths/median.ts';
import type { CauseId, Origin } from '../model/finding.ts';
import type { Celsius } from '../units/quantities.ts';
import type { Judgement } from './judgement.ts';
import { lacksByNight } from './lacks-by-night.ts';
import type { Trouble } from './trouble.ts';
import { warmSpell } from './warm-spell.ts';

/** Likeliest first, as written. */
type Likelihoods = Readonly<Partial<{ [cause in CauseId]: number }>>;
type Features = Readonly<{ [name: string]: number }>;

interface Answer {
  readonly origin: Origin | ((features: Features) => Origin);
  readonly causes: Likelihoods | ((features: Features, trouble: Trouble) => Likelihoods);
}

const slowRecovery: Likelihoods = {
  'airflow-or-ice': 0.4,
  underfeeding: 0.2,
  drain: 0.12,
  'defrost-heat': 0.12,
};

/** Evidence whose shape already says what it is. Keys are `kind/shape`, or `kind` for every other shape. */
const answers: Readonly<{ [key: string]: Answer }> = {
  'upward-drift/trading-hours': {
    origin: 'case',
    causes: tradingHours,
  },
  'probe-disagreement/stuck': { origin: 'probe', causes: { 'probe-stuck': 0.85, logging: 0.1 } },
  'probe-disagreement/open-or-short': { origin: 'probe', causes: { 'probe-open-or-short': 0.92 } },
  'probe-disagreement/silent': { origin: 'probe', causes: { 'probe-open-or-short': 0.75, logging: 0.2 } },
  'probe-disagreement/flutter': {
    origin: 'probe',
    causes: { 'probe-noise': 0.85, 'probe-open-or-short': 0.1 },
  },
  'probe-disagreement/swapped': { origin: 'probe', causes: { 'probe-swapped': 0.7, 'probe-moved': 0.2 } },
  'probe-disagreement/episodes': { origin: passingOrigin, causes: passing },
  'short-cycling/valve': { origin: 'control', causes: { 'tight-differential': 0.8, overfeeding: 0.05 } },
  'short-cycling': { origin: 'control', causes: compressorCycling },
  'short-cycling/in-step': {
    origin: 'control',
    causes: { 'circuits-in-step': 0.65, 'tight-differential': 0.2, 'compressor-control': 0.1 },
  },
  'short-cycling/valves-together': {
    origin: 'control',
    causes: { 'circuits-in-step': 0.5, 'tight-differential': 0.35, 'compressor-control': 0.05 },
  },
  'defrost-missed/moved': { origin: 'control', causes: { 'defrost-schedule': 0.85 } },
  'defrost-missed/clock-moved': { origin: 'control', causes: { 'defrost-schedule': 0.85 } },
  'defrost-missed': { origin: 'defrost', causes: { 'defrost-schedule': 0.75, 'left-off': 0.1 } },
  'defrost-recovery': { origin: 'defrost', causes: slowRecovery },
  'defrost-recovery/weak-rise': { origin: 'defrost', causes: weakRise },
  'defrost-recovery/extended': {
    origin: 'defrost',
    causes: extended,
  },
  'defrost-recovery/by-the-clock': {
    origin: 'defrost',
    causes: byTheClock,
  },
  'defrost-recovery/overheated': { origin: 'defrost', causes: { 'defrost-termination': 0.8 } },
  'short-cycling/valve-inferred': { origin: 'control', causes: { 'tight-differential': 0.7 } },
  'defrost-recovery/ended-early': {
    origin: 'defrost',
    causes: { 'defrost-termination': 0.65, 'defrost-schedule': 0.2 },
  },
  'defrost-recovery/drip-lost': { origin: 'defrost', causes: { 'defrost-schedule': 0.7 } },
  'rack-pressure': {
    origin: 'rack',
    causes: unlessCondensing({ 'compressor-control': 0.45, 'capacity-shortfall': 0.3, 'low-charge': 0.1 }),
  },
  'rack-pressure/capacity-shortfall': {
    origin: 'rack',
    causes: unlessCondensing({ 'capacity-shortfall': 0.75, 'compressor-control': 0.15 }),
  },
  'rack-pressure/short-of-liquid': { origin: 'rack', causes: shortOfLiquid },
  'rack-pressure/group-warm': {
    origin: 'rack',
    causes: { 'capacity-shortfall': 0.45, 'low-charge': 0.25, weather: 0.15 },
  },
  'rack-pressure/target-raised': {
    origin: 'rack',
    causes: { 'set-point': 0.75, 'compressor-control': 0.15 },
  },
  'rack-pressure/target-lowered': {
    origin: 'control',
    causes: loweredTarget,
  },
  'rack-pressure/target-left': {
    origin: 'control',
    causes: { 'set-point': 0.7, 'service-visit': 0.2 },
  },
  'rack-pressure/low': {
    origin: 'rack',
    causes: { 'compressor-control': 0.5, 'set-point': 0.2, 'low-charge': 0.15 },
  },
  'rack-pressure/low-pressure-trips': {
    origin: 'rack',
    causes: { 'compressor-control': 0.55, 'low-charge': 0.25 },
  },
  'rack-pressure/service-visit': { origin: 'record', causes: { 'service-visit': 0.9 } },
  'rack-pressure/float-stopped': { origin: 'control', causes: { 'set-point': 0.7 } },
  'rack-pressure/condensing-high': { origin: 'rack', causes: { condensing: 0.85 } },
  'rack-pressure/level-low': { origin: 'rack', causes: { 'low-charge': 0.7, logging: 0.15 } },
  superheat: { origin: 'case', causes: { underfeeding: 0.65, 'low-charge': 0.15, overfeeding: 0.05 } },
  'superheat/flooding': { origin: 'case', causes: { overfeeding: 0.85 } },
  'left-off': { origin: 'control', causes: { 'left-off': 0.8, 'service-visit': 0.15 } },
  'left-off/was-off': { origin: 'control', causes: { 'service-visit': 0.6, 'left-off': 0.35 } },
  'left-off/override-was-on': { origin: 'control', causes: { 'service-visit': 0.6, 'left-off': 0.35 } },
  'left-off/set-point-changed': {
    origin: 'control',
    causes: { 'set-point': 0.75, 'service-visit': 0.1 },
  },
  'left-off/set-point-left': { origin: 'control', causes: { 'set-point': 0.7, 'service-visit': 0.2 } },
  'record-quality': { origin: 'record', causes: { logging: 0.9 } },
};

function tradingHours(features: Features): Likelihoods {
  return lacksByNight(features)
    ? { underfeeding: 0.42, 'airflow-or-ice': 0.28, 'door-or-load': 0.2 }
    : { 'door-or-load': 0.75, 'airflow-or-ice': 0.1, underfeeding: 0.08 };
}

/** By its column nobody doubts it; by the pressure alone a machine that its control no longer stops looks like it. */
function loweredTarget({ fromColumn }: Features): Likelihoods {
  return fromColumn === 1 ? { 'set-point': 0.85 } : { 'set-point': 0.6, 'compressor-control': 0.25 };
}

/** A group short of suction under a high condensing pressure is short because of it, by its own record; one that is back every night, by the weather. */
function unlessCondensing(causes: Likelihoods) {
  return (features: Features, trouble: Trouble): Likelihoods => {
    if (features.condensingRise !== undefined) return { condensing: 0.65, 'capacity-shortfall': 0.2 };
    return warmSpell(trouble) === 'weather' ? { weather: 0.6, 'capacity-shortfall': 0.25 } : causes;
  };
}

/** A receiver that is nearly empty says why; one by one, each for itself, valves and strainers do the same. */
function shortOfLiquid({ levelRatio }: Features): Likelihoods {
  return levelRatio !== undefined
    ? { 'low-charge': 0.85, underfeeding: 0.08 }
    : { 'low-charge': 0.6, underfeeding: 0.25, 'airflow-or-ice': 0.06 };
}

/** Air has inertia: what jumps most of the way from one reading to the next is the probe. */
function passingOrigin(features: Features): Origin {
  return features.jumps === 1 ? 'probe' : 'case';
}

function passing(features: Features): Likelihoods {
  return passingOrigin(features) === 'probe'
    ? { 'probe-noise': 0.5, 'probe-open-or-short': 0.3 }
    : { 'door-or-load': 0.55, 'evaporator-fan': 0.25 };
}

const cutOutShapes: readonly string[] = ['low', 'low-pressure-trips'];

/**
 * Low-pressure trips, seen when the machines stopped or in their suction since, are the pressure control's doing; a pressure
 * that hardly swings is a band that is too tight.
 */
function compressorCycling(features: Features, { evidence }: Trouble): Likelihoods {
  const isDrawnDown = evidence.some(({ shape }) => cutOutShapes.includes(shape));
  if (isDrawnDown || (features.lowPressureStopShare ?? 0) >= 0.3) {
    return { 'compressor-control': 0.6, 'low-charge': 0.2, 'tight-differential': 0.1 };
  }
  return { 'tight-differential': 0.65, 'compressor-control': 0.3 };
}

/**
 * Hardly any rise: without a heater the coil holds ice, else the heat is missing. Where nobody said, a chilled circuit
 * with no probe that ends its defrosts most likely has no heater (common practice, no source).
 */
function weakRise(_features: Features, { circuit, group }: Trouble): Likelihoods {
  const plan = circuit?.circuit.defrost;
  if (plan?.kind === 'off-cycle') return { 'airflow-or-ice': 0.5, drain: 0.15, 'defrost-schedule': 0.15 };
  const isSilent = plan?.kind === null && circuit!.circuit.defrostTermination.length === 0;
  const level = circuit === null ? Number.NaN : median(circuit.air);
  return isSilent && group?.group.class !== 'low' && level > chilledFrom
    ? { 'airflow-or-ice': 0.45, 'defrost-heat': 0.25, drain: 0.1 }
    : { 'defrost-heat': 0.8, 'defrost-termination': 0.1 };
}

/** Air of chilled circuits stands over this. Common practice, no source. */
const chilledFrom: Celsius = -5;

/** A rise so much slower, and no higher for all its length, is a coil that is heated less. */
const slowHeat = 0.75;
const noHigher = 1.15;

/** K by which the air between longer defrosts is warmer when their coil is no longer cleared. */
const frostStays = 2;
const sameTimeMs = 12 * 3_600_000;

/**
 * Off-cycle defrosts with no probe on the coil end by the clock: longer ones were set so, or the coil holds ice. Heated
 * ones whose termination failed warm the air as fast as ever, and further, and leave a cleaner coil; with less heat
 * it rises more slowly, and frost that stays warms the case between them.
 */
function extended(features: Features, trouble: Trouble): Likelihoods {
  const { circuit } = trouble;
  const isTimed =
    circuit?.circuit.defrost.kind === 'off-cycle' && circuit.circuit.defrostTermination.length === 0;
  if (isTimed) return { 'defrost-schedule': 0.5, 'airflow-or-ice': 0.25 };
  return lacksHeat(features, trouble) ? lessHeat : { 'defrost-termination': 0.75, 'defrost-heat': 0.15 };
}

/** A coil that is heated less does not reach its end temperature any more either. */
function byTheClock(features: Features, trouble: Trouble): Likelihoods {
  return lacksHeat(features, trouble) ? lessHeat : { 'defrost-termination': 0.8, 'defrost-heat': 0.1 };
}

const lessHeat: Likelihoods = { 'defrost-heat': 0.7, 'defrost-termination': 0.2 };

function lacksHeat({ heatRateRatio = 1, heatRiseRatio = 1 }: Features, trouble: Trouble): boolean {
  return keepsFrost(trouble) || (heatRateRatio < slowHeat && heatRiseRatio < noHigher);
}

function keepsFrost({ lead, evidence }: Trouble): boolean {
  return evidence.some(
    ({ kind, features, onset }) =>
      kind === 'upward-drift' && (features.rise ?? 0) >= frostStays && onset >= lead.onset - sameTimeMs,
  );
}

export function directJudgement(trouble: Trouble, features: Features): Judgement {
  const { kind, shape } = trouble.lead;
  const { origin, causes } = answers[`${kind}/${shape}`] ?? answers[kind]!;
  const likelihoods = typeof causes === 'function' ? causes(features, trouble) : causes;
  return {
    kind,
    origin: typeof origin === 'function' ? origin(features) : origin,
    originLikelihood: 0.9,
    causes: Object.entries(likelihoods).map(([cause, likelihood]) => ({
      cause: cause as CauseId,
      likelihood,
    })),
  };
}
