import { type Hypothesis, near, yes } from './naive-bayes.ts';

/**
 * Truth or lie, for one probe that left its neighbours. Means and spreads of `defrostOffsetRatio`,
 * `dayNightRatio` and `riseRatio` were measured on simulated stores (section model: ice −2.5 (−5.4 … −1.0),
 * lost airflow 0.64 (0.46 … 0.81), moved 0.49, lying probe 0.90 (0.79 … 1.0)) and widened because other plants
 * differ; `inconstancy`, `wanderRatio` and `spill` likewise (lies up to 0.13, 0.8 … 1.2, −0.1 … 0.1; leaks 0 … 1.1, 0.9 … 2, 0 … 0.2);
 * the rest is common practice. Lost air stands in two forms: ice, which turns its end colder late in a defrost, and an
 * end whose air is blocked where the fans run on, which leaks as before. So does a door or load: in trading hours, and
 * store air that leaks in at one place. `creeping` is 1 for a creep and 0 for a step (between where the days leave it
 * open), `warm` is 1 where the probe went up. Adjusted on the tuning seeds of npm run evaluate only.
 */
export const oneProbeCauses: readonly Hypothesis[] = [
  {
    cause: 'airflow-or-ice',
    origin: 'case',
    prior: 0.28,
    features: {
      creeping: yes(0.96),
      warm: yes(0.98),
      defrostOffsetRatio: near(0, 0.9),
      dayNightRatio: near(0.5, 0.35),
      riseRatio: near(0.6, 0.35),
      swingRatio: near(0.6, 0.25),
      recoveryRatio: near(1.1, 0.9),
      phaseCorrelation: near(0.7, 0.3),
      inconstancy: near(0.6, 0.5),
      wanderRatio: near(1.8, 0.8),
      spill: near(0.1, 0.1),
      offOffsetRatio: near(0.3, 0.35),
      largest: yes(0.002),
    },
  },
  {
    cause: 'airflow-or-ice',
    origin: 'case',
    prior: 0.08,
    features: {
      creeping: yes(0.93),
      warm: yes(0.98),
      defrostOffsetRatio: near(0.85, 0.3),
      dayNightRatio: near(0.4, 0.35),
      riseRatio: near(0.9, 0.2),
      swingRatio: near(0.75, 0.25),
      recoveryRatio: near(1.1, 0.9),
      phaseCorrelation: near(0.8, 0.25),
      inconstancy: near(0.3, 0.25),
      wanderRatio: near(1.8, 0.8),
      spill: near(0.1, 0.1),
      offOffsetRatio: near(0.5, 0.35),
      largest: yes(0.002),
    },
  },
  {
    cause: 'evaporator-fan',
    origin: 'case',
    prior: 0.2,
    features: {
      creeping: yes(0.05),
      warm: yes(0.97),
      defrostOffsetRatio: near(0.45, 0.3),
      dayNightRatio: near(0.38, 0.28),
      riseRatio: near(0.65, 0.28),
      swingRatio: near(0.6, 0.25),
      recoveryRatio: near(1.1, 0.7),
      phaseCorrelation: near(0.8, 0.2),
      inconstancy: near(0.4, 0.25),
      wanderRatio: near(1.8, 0.8),
      spill: near(0.1, 0.1),
      offOffsetRatio: near(0.3, 0.35),
      largest: yes(0.002),
    },
  },
  {
    cause: 'probe-offset',
    origin: 'probe',
    prior: 0.17,
    features: {
      creeping: yes(0.05),
      warm: yes(0.5),
      defrostOffsetRatio: near(0.95, 0.13),
      dayNightRatio: near(0, 0.14),
      riseRatio: near(0.99, 0.08),
      swingRatio: near(1, 0.08),
      recoveryRatio: near(1, 0.2),
      phaseCorrelation: near(0.95, 0.06),
      inconstancy: near(0.02, 0.05),
      wanderRatio: near(1, 0.12),
      spill: near(0, 0.04),
      offOffsetRatio: near(1, 0.15),
      largest: yes(0.03),
    },
  },
  {
    cause: 'probe-drift',
    origin: 'probe',
    prior: 0.16,
    features: {
      creeping: yes(0.96),
      warm: yes(0.6),
      defrostOffsetRatio: near(0.95, 0.13),
      dayNightRatio: near(0, 0.14),
      riseRatio: near(0.99, 0.08),
      swingRatio: near(1, 0.08),
      recoveryRatio: near(1, 0.2),
      phaseCorrelation: near(0.95, 0.06),
      inconstancy: near(0.03, 0.06),
      wanderRatio: near(1.05, 0.2),
      spill: near(0, 0.05),
      offOffsetRatio: near(1, 0.15),
      largest: yes(0.01),
    },
  },
  {
    cause: 'probe-moved',
    origin: 'probe',
    prior: 0.04,
    features: {
      creeping: yes(0.05),
      warm: yes(0.85),
      defrostOffsetRatio: near(0.45, 0.3),
      dayNightRatio: near(0.45, 0.25),
      riseRatio: near(0.93, 0.07),
      swingRatio: near(1, 0.12),
      recoveryRatio: near(1.1, 0.5),
      phaseCorrelation: near(0.96, 0.05),
      inconstancy: near(0.3, 0.18),
      wanderRatio: near(1.8, 0.8),
      spill: near(0.01, 0.06),
      offOffsetRatio: near(0.4, 0.35),
      largest: yes(0.02),
    },
  },
  {
    cause: 'probe-open-or-short',
    origin: 'probe',
    prior: 0.03,
    features: {
      creeping: yes(0.05),
      warm: yes(0.5),
      defrostOffsetRatio: near(1, 0.3),
      dayNightRatio: near(0, 0.3),
      riseRatio: near(0.2, 0.4),
      swingRatio: near(0.2, 0.4),
      recoveryRatio: near(1, 0.6),
      phaseCorrelation: near(0.1, 0.3),
      inconstancy: near(0.1, 0.3),
      wanderRatio: near(1, 0.5),
      spill: near(0, 0.3),
      offOffsetRatio: near(1, 0.3),
      largest: yes(0.97),
    },
  },
  {
    cause: 'door-or-load',
    origin: 'case',
    prior: 0.06,
    features: {
      creeping: yes(0.25),
      warm: yes(0.97),
      defrostOffsetRatio: near(0.7, 0.35),
      dayNightRatio: near(1.2, 0.45),
      riseRatio: near(0.9, 0.2),
      swingRatio: near(1, 0.2),
      recoveryRatio: near(1.2, 0.4),
      phaseCorrelation: near(0.85, 0.15),
      inconstancy: near(0.25, 0.2),
      wanderRatio: near(1.8, 0.8),
      spill: near(0.1, 0.1),
      offOffsetRatio: near(0.5, 0.35),
      largest: yes(0.002),
    },
  },
  {
    cause: 'door-or-load',
    origin: 'case',
    prior: 0.1,
    features: {
      creeping: yes(0.08),
      warm: yes(0.98),
      defrostOffsetRatio: near(1.2, 0.3),
      dayNightRatio: near(0.15, 0.2),
      riseRatio: near(1.08, 0.12),
      swingRatio: near(1.05, 0.18),
      recoveryRatio: near(1.3, 0.5),
      phaseCorrelation: near(0.96, 0.05),
      inconstancy: near(0.25, 0.2),
      wanderRatio: near(1.5, 0.5),
      spill: near(0.1, 0.1),
      offOffsetRatio: near(1, 0.4),
      largest: yes(0.002),
    },
  },
];

/** A change as large as this is no case and no ageing probe, K. */
const largestBelievable = 14;

/** Features of the evidence as the table above names them. */
export function oneProbeFeatures(
  features: Readonly<{ [name: string]: number }>,
  shape: string,
): { [name: string]: number } {
  const shift = features.shift ?? features.rise ?? 0;
  const known: { [name: string]: number } = {
    ...features,
    warm: shift >= 0 ? 1 : 0,
    largest: Math.abs(shift) >= largestBelievable ? 1 : 0,
  };
  if (known.creeping === undefined && shape === 'creep') known.creeping = 1;
  if (known.creeping === undefined && shape === 'step') known.creeping = 0;
  return known;
}
