/** A level and its slope a step, as they stand at the last value, with their variances and covariance. */
export interface LocalTrend {
  readonly level: number;
  readonly slope: number;
  readonly levelVariance: number;
  readonly covariance: number;
  readonly slopeVariance: number;
}

export interface LocalTrendModel {
  /** What is held true at the first value, before it is looked at. */
  readonly start: LocalTrend;
  /** Variance of a value about the level. */
  readonly noise: number;
  /** Variance that the slope gains in a step. */
  readonly slopeWander: number;
}

/**
 * A value further off what was expected than so many deviations moves the trend no more than one that stands there (Huber), unless
 * the value before it was as far off to the same side: one is wild, two are where the series went.
 */
const furthest = 3;

/**
 * Local linear trend by the Kalman filter (Harvey 1989, Forecasting, Structural Time Series Models and the Kalman Filter, 2.3
 * and 4.1; the slope is a continuous random walk, so the level gains a third of its wander): the newest values say
 * most of where a series stands and how fast it goes. With no wander it is the least squares line. Values that are not finite are passed over.
 */
export function localTrend(values: ArrayLike<number>, model: LocalTrendModel): LocalTrend {
  const { noise, slopeWander } = model;
  let { level, slope, levelVariance, covariance, slopeVariance } = model.start;
  let wildBefore = 0;
  for (let i = 0; i < values.length; i++) {
    if (i > 0) {
      level += slope;
      levelVariance += 2 * covariance + slopeVariance + slopeWander / 3;
      covariance += slopeVariance + slopeWander / 2;
      slopeVariance += slopeWander;
    }
    const value = values[i]!;
    if (!Number.isFinite(value)) continue;
    const expected = levelVariance + noise;
    const most = furthest * Math.sqrt(expected);
    const off = value - level;
    const wild = Math.abs(off) > most ? Math.sign(off) : 0;
    const surprise = wild === 0 || wild === wildBefore ? off : wild * most;
    wildBefore = wild;
    const gain = levelVariance / expected;
    const slopeGain = covariance / expected;
    level += gain * surprise;
    slope += slopeGain * surprise;
    slopeVariance -= slopeGain * covariance;
    covariance *= 1 - gain;
    levelVariance *= 1 - gain;
  }
  return { level, slope, levelVariance, covariance, slopeVariance };
}
