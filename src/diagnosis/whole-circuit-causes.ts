import { type Hypothesis, near, yes } from './naive-bayes.ts';

/**
 * Why all probes of one circuit stand higher together while the other circuits do not. `dutyRise` is the rise of
 * the share of time its valve feeds; a control that was told to hold a warmer air feeds less and cycles as
 * before (and is told at once: nobody turns a set point up a little every day; where the set point is logged the rise stands
 * over it, `overLoggedSetPoint`); within one hour (`sudden`) a door comes open, while liquid fails by degrees more often than at once; one that cannot hold it feeds all the time and hardly cycles. `peakLag` is by how much less
 * than the air the peaks of its defrosts rose, K, below 0: frost and cold metal that do not melt out hold them down. `riseRateRatio` and `defrostLengthRatio` hold its defrosts now
 * against those before: measured on the section model (fastest rise while it defrosts: coil that lacks refrigerant 0.82 (0.65 … 0.91), coil that
 * lacks air, iced or not, 0.47 (0.18 … 0.57); length where a temperature ends it: shorter and longer) and widened. Shop air that a door lets in warms the case
 * faster in its defrosts, too, which no coil does that cools less; a case with little load to spare for it feeds all the time. `returnGapLog` is the
 * logarithm of the distance of return from discharge air now over that before: the heat that the case takes up over what its air carries, so larger behind an open door, larger
 * where less air passes a coil that still carries the load, as ever or a little smaller over one that lacks liquid. Common practice, no source; adjusted
 * on the tuning seeds of npm run evaluate only.
 */
export const wholeCircuitCauses: readonly Hypothesis[] = [
  {
    cause: 'underfeeding',
    origin: 'case',
    prior: 0.42,
    features: {
      creeping: yes(0.75),
      sudden: yes(0.2),
      overLoggedSetPoint: yes(0.5),
      dutyRise: near(0.3, 0.2),
      swingRatio: near(0.6, 0.35),
      recoveryRatio: near(2, 0.9),
      dayNightRatio: near(0.3, 0.4),
      peakLag: near(-0.9, 1),
      riseRateRatio: near(0.85, 0.18),
      defrostLengthRatio: near(0.75, 0.3),
      returnGapLog: near(-0.05, 0.12),
      superheatRise: near(8, 6),
    },
  },
  {
    cause: 'airflow-or-ice',
    origin: 'case',
    prior: 0.24,
    features: {
      creeping: yes(0.9),
      sudden: yes(0.05),
      overLoggedSetPoint: yes(0.5),
      dutyRise: near(0.25, 0.2),
      swingRatio: near(0.7, 0.35),
      recoveryRatio: near(1.6, 0.7),
      dayNightRatio: near(0.4, 0.4),
      peakLag: near(-2.8, 1.2),
      riseRateRatio: near(0.48, 0.15),
      defrostLengthRatio: near(1.5, 0.5),
      returnGapLog: near(0.4, 0.25),
      superheatRise: near(-1, 3),
    },
  },
  {
    cause: 'door-or-load',
    origin: 'case',
    prior: 0.14,
    features: {
      creeping: yes(0.25),
      sudden: yes(0.5),
      overLoggedSetPoint: yes(0.5),
      dutyRise: near(0.25, 0.25),
      swingRatio: near(0.75, 0.35),
      recoveryRatio: near(1.3, 0.5),
      dayNightRatio: near(0.8, 0.5),
      peakLag: near(1, 2),
      riseRateRatio: near(1.3, 0.5),
      defrostLengthRatio: near(1, 0.4),
      returnGapLog: near(0.85, 0.4),
      superheatRise: near(1, 3),
    },
  },
  {
    cause: 'set-point',
    origin: 'control',
    prior: 0.2,
    features: {
      creeping: yes(0.01),
      sudden: yes(0.6),
      overLoggedSetPoint: yes(0.001),
      dutyRise: near(-0.05, 0.08),
      swingRatio: near(1, 0.12),
      recoveryRatio: near(1, 0.25),
      dayNightRatio: near(0, 0.2),
      peakLag: near(0, 1),
      riseRateRatio: near(1, 0.15),
      defrostLengthRatio: near(1, 0.15),
      returnGapLog: near(-0.03, 0.08),
      superheatRise: near(0, 2),
    },
  },
];

export function wholeCircuitFeatures(
  features: Readonly<{ [name: string]: number }>,
  shape: string,
): { [name: string]: number } {
  if (shape === 'step') return { ...features, creeping: 0 };
  return { ...features, creeping: 1 };
}
