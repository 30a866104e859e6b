import { describe, expect, test } from 'vitest';
import { type CondensingHours, condensingNorm } from '../../src/analyses/rack-pressure/condensing-norm.ts';

const hours = 24 * 14;
const normHours = 24 * 7;
/** Repeatable scatter of about a third of a kelvin. */
const scatter = (hour: number): number => 0.4 * Math.sin(7.3 * hour * hour + hour);
const each = (at: (hour: number) => number): Float64Array =>
  Float64Array.from({ length: hours }, (_, hour) => at(hour));
const outdoor = each((hour) => 20 + 6 * Math.sin((2 * Math.PI * hour) / 24) + 3 * Math.sin(hour / 40));
const running = each((hour) => 2 + (hour % 7 < 3 ? 1 : 0) + (hour % 24 > 9 ? 1 : 0));

const normOf = (given: CondensingHours, hours: number, hasZero = true) =>
  condensingNorm(given, hours, hasZero)?.at ?? null;

describe('the norm of condensing', () => {
  test('gives back the line that it was made of, weather and machines apart, and is not led by a wild hour', () => {
    const made = (hour: number): number => 9 + 0.8 * outdoor[hour]! + 1.5 * running[hour]!;
    const condensing = each((hour) => made(hour) + scatter(hour) + (hour % 50 === 3 ? 12 : 0));
    const norm = normOf({ condensing, outdoor, running }, normHours)!;
    for (let hour = normHours; hour < hours; hour++) {
      if (made(hour) < 29) continue;
      expect(Math.abs(norm(hour) - made(hour))).toBeLessThan(0.6);
    }
  });

  test('expects more of a busier rack in the same weather, which a difference alone takes for a fault', () => {
    const condensing = each((hour) => Math.max(22, outdoor[hour]! + 4 + 2 * running[hour]!) + scatter(hour));
    const busy = running.map((machines, hour) => (hour < normHours ? machines : machines + 1));
    const later = each((hour) => Math.max(22, outdoor[hour]! + 4 + 2 * busy[hour]!) + scatter(hour));
    const at = normHours + 14;
    const both = condensing.map((value, hour) => (hour < normHours ? value : later[hour]!));
    const withMachines = normOf({ condensing: both, outdoor, running: busy }, normHours)!;
    const without = normOf({ condensing: both, outdoor, running: null }, normHours)!;
    expect(Math.abs(later[at]! - withMachines(at))).toBeLessThan(0.8);
    expect(later[at]! - without(at)).toBeGreaterThan(1.2);
  });

  test('never goes under its floor', () => {
    const condensing = each((hour) => Math.max(25, outdoor[hour]! + 8));
    const norm = normOf(
      { condensing, outdoor: outdoor.map((value, hour) => (hour < normHours ? value : -10)), running: null },
      normHours,
    )!;
    expect(norm(normHours + 5)).toBeCloseTo(25, 0);
  });

  test('goes on at a kelvin a kelvin in weather hotter than it learnt, where staged fans had taught it less', () => {
    const condensing = each((hour) => 20 + 0.5 * outdoor[hour]!);
    const hot = outdoor.map((value, hour) => (hour < normHours ? value : 40));
    const hottest = Math.max(...outdoor.subarray(0, normHours));
    const norm = normOf({ condensing, outdoor: hot, running: null }, normHours)!;
    expect(norm(normHours + 1)).toBeCloseTo(20 + 0.5 * hottest + (40 - hottest), 1);
  });

  test('falls back on a plain difference in even weather, on that of common practice after hours on the floor, and on nothing', () => {
    const even = each((hour) => 20 + 0.5 * Math.sin(hour));
    const plain = normOf(
      {
        condensing: even.map((value, hour) => value + (hour % 12 === 0 ? 2 : 7)),
        outdoor: even.map((value, hour) => (hour < normHours ? value : value + 5)),
        running: null,
      },
      normHours,
    )!;
    expect(plain(normHours + 1)).toBeCloseTo(even[normHours + 1]! + 5 + 7, 0);
    const floored = normOf(
      { condensing: each(() => 25), outdoor: each((hour) => (hour < normHours ? 5 : 30)), running: null },
      normHours,
    )!;
    expect(floored(normHours + 1)).toBe(41);
    expect(normOf({ condensing: even, outdoor: each(() => Number.NaN), running }, normHours)).toBeNull();
  });

  test('learns from hours on the floor that it could stand there in such weather, with a scale that has no zero too', () => {
    const spring = each((hour) => 12 + 5 * Math.sin((2 * Math.PI * hour) / 24));
    const later = spring.map((value, hour) => (hour < normHours ? value : value + 3));
    const floored = { condensing: each(() => 25), outdoor: later, running: null };
    const [warmest] = [...later.keys()].slice(normHours).sort((a, b) => later[b]! - later[a]!);
    for (const hasZero of [true, false]) {
      const norm = normOf(floored, normHours, hasZero)!;
      expect(norm(warmest!)).toBeCloseTo(29, 0);
      expect(norm(normHours)).toBe(25);
    }
    const cold = { ...floored, outdoor: each((hour) => (hour < normHours ? -5 : 20)) };
    expect(normOf(cold, normHours)!(normHours)).toBe(31);
  });

  test('does not learn a fault that began in its last hours from it, where days as warm before were on the floor', () => {
    const spring = each((hour) => 12 + 5 * Math.sin((2 * Math.PI * hour) / 24));
    const failed = normHours - 24;
    const condensing = each((hour) => Math.max(25, spring[hour]! + (hour < failed ? 6 : 15)));
    const norm = normOf({ condensing, outdoor: spring, running: null }, normHours)!;
    const risen = [...spring.keys()].slice(normHours).map((hour) => condensing[hour]! - norm(hour));
    expect(Math.max(...risen)).toBeGreaterThan(5);
  });

  test('learns how far it stands above the weather from a few hours off the floor', () => {
    const outdoorNow = each((hour) => (hour % 24 === 14 ? 21 : 12));
    const condensing = each((hour) => Math.max(25, outdoorNow[hour]! + 7));
    const norm = normOf({ condensing, outdoor: outdoorNow.map((v) => v), running: null }, normHours)!;
    expect(norm(normHours + 14)).toBeCloseTo(28, 1);
  });

  test('leaves out a slope that no condenser has', () => {
    const condensing = each((hour) => outdoor[hour]! + 10 - 2 * running[hour]! + scatter(hour));
    const norm = normOf({ condensing, outdoor, running }, normHours)!;
    const alike = [4, 28, 52].map((hour) => norm(normHours + hour) - outdoor[normHours + hour]!);
    expect(Math.max(...alike) - Math.min(...alike)).toBeLessThan(1.5);
  });
});
