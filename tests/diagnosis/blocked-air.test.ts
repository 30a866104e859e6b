import { expect, it } from 'vitest';
import { evidence, one } from './support.ts';

/**
 * An end whose air is blocked, or taken by ice, where the fans run through an off-cycle defrost: it goes on leaking, so it
 * keeps its offset; what tells it from a leak that came at one hour is that it grew. Common practice, no source.
 */
const blocked = {
  shift: 3.5,
  rampDays: 8,
  defrostOffsetRatio: 0.91,
  riseRatio: 0.95,
  dayNightRatio: 0.3,
  swingRatio: 0.85,
  phaseCorrelation: 0.93,
  inconstancy: 0.25,
  spill: 0.12,
};
const causeOf = (shape: 'creep' | 'step', features: { [name: string]: number }): string =>
  one(evidence({ probe: 'M01 air A', shape, features })).causes[0]!.cause;

it('an end that grew warm over days and leaks on through defrost is its air or ice', () => {
  expect(causeOf('creep', blocked)).toBe('airflow-or-ice');
});

it('one that was so from an hour on is an open door', () => {
  expect(causeOf('step', { ...blocked, rampDays: 0 })).toBe('door-or-load');
});

it('one that grew as steadily as a lie is a probe that drifts', () => {
  const lie = { ...blocked, dayNightRatio: 0, swingRatio: 1, riseRatio: 1, inconstancy: 0.03, spill: 0 };
  expect(causeOf('creep', { ...lie, defrostOffsetRatio: 0.98 })).toBe('probe-drift');
});
