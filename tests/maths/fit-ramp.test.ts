import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fitRamp, isClear } from '../../src/maths/fit-ramp.ts';

interface Annotated {
  readonly series: readonly { readonly raw: readonly number[] }[];
}

/** One series of the Turing Change Point Dataset (tests/golden/SOURCES.md). */
function tcpd(name: string): number[] {
  const url = new URL(`../golden/trend/tcpd/${name}.json`, import.meta.url);
  return [...(JSON.parse(readFileSync(url, 'utf8')) as Annotated).series[0]!.raw];
}

const clear = { leastSize: 0, leastScales: 1.3, leastScale: 0, leastExplained: 0.3 };
const positions = (values: readonly number[]): number[] => values.map((_, i) => i);

/** Every change point that one of the five annotators marked, first index of the new level, 0-based. */
function marked(name: string): number[] {
  const url = new URL('../golden/trend/tcpd/annotations.json', import.meta.url);
  const all = JSON.parse(readFileSync(url, 'utf8')) as {
    [series: string]: { [annotator: string]: number[] };
  };
  return Object.values(all[name]!).flat();
}

describe('fitRamp on annotated series', () => {
  it.each(['nile', 'quality_control_1', 'quality_control_2', 'quality_control_3', 'quality_control_4'])(
    'puts the change of %s within three readings of one that an annotator marked',
    (name) => {
      const values = tcpd(name);
      const ramp = fitRamp(positions(values), values)!;
      const middle = (ramp.start + ramp.end + 1) / 2;
      expect(Math.min(...marked(name).map((change) => Math.abs(change - middle)))).toBeLessThanOrEqual(3);
      expect(isClear(ramp, clear)).toBe(true);
    },
  );

  it('puts the step of the Nile at Aswan between 1898 and 1899', () => {
    const values = tcpd('nile');
    expect(fitRamp(positions(values), values)).toMatchObject({ start: 27, end: 28 });
  });

  it('calls nothing clear in quality_control_5, in which no annotator saw a change', () => {
    const values = tcpd('quality_control_5');
    expect(isClear(fitRamp(positions(values), values)!, clear)).toBe(false);
  });
});

describe('fitRamp on made series', () => {
  const noise = (i: number): number => 0.05 * Math.sin(12.9 * i * i);
  const days = Array.from({ length: 30 }, (_, i) => i);

  it('returns both knees and both levels of a creep that levels off', () => {
    const values = days.map((day) => 1 + Math.max(0, Math.min(3, (day - 9) / 2)) + noise(day));
    const ramp = fitRamp(days, values)!;
    expect(Math.abs(ramp.start - 9)).toBeLessThanOrEqual(1);
    expect(Math.abs(ramp.end - 15)).toBeLessThanOrEqual(1);
    expect(ramp.before).toBeCloseTo(1, 1);
    expect(ramp.after).toBeCloseTo(4, 1);
    expect(ramp.explained).toBeGreaterThan(0.99);
  });

  it('is not moved by one wild day', () => {
    const values = days.map((day) => (day < 20 ? 0 : 2) + noise(day));
    values[5] = 9;
    const ramp = fitRamp(days, values)!;
    expect(ramp.start).toBe(19);
    expect(ramp.after - ramp.before).toBeCloseTo(2, 0);
  });

  it('leaves unknown days out and keeps positions in the series as it was given', () => {
    const values = days.map((day) => (day % 7 === 3 ? Number.NaN : day < 15 ? 0 : 2));
    const ramp = fitRamp(days, values)!;
    expect([ramp.start, ramp.end]).toEqual([14, 15]);
  });

  it('says nothing about fewer than four known values', () => {
    expect(fitRamp([0, 1, 2, 3], [1, Number.NaN, 2, 3])).toBeNull();
  });

  it('refines knees that lie between the candidates of a long series', () => {
    const long = Array.from({ length: 400 }, (_, i) => (i < 137 ? 0 : 1) + noise(i));
    const ramp = fitRamp(positions(long), long)!;
    expect([ramp.start, ramp.end]).toEqual([136, 137]);
  });
});
