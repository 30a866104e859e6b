import { describe, expect, test } from 'vitest';
import { circuitSeries } from '../../src/reporting/circuit-series.ts';
import { endOf } from '../../src/reporting/local-time.ts';
import { troubledExample } from './support/example.ts';

const { log, signals, diagnosis } = troubledExample();
const whole = circuitSeries(log, signals, 'M01', log.grid.startMs, endOf(log), 400, diagnosis.findings);

describe('the series of one circuit for a plot', () => {
  test('are plain JSON in the units of the site', () => {
    expect(JSON.parse(JSON.stringify(whole))).toEqual(whole);
    expect(whole.temperatureUnit).toBe('°F');
    const setPoint = whole.setPoint!.values.map((value) => Math.round(value!));
    expect(new Set(setPoint)).toEqual(new Set([36]));
    expect(whole.limit).toBeGreaterThan(36);
  });

  test('hold every probe, the valve as a share, the suction pressure and its target', () => {
    expect(whole.probes.map(({ point }) => point)).toEqual(log.circuits[0]!.probes.map(({ point }) => point));
    const shares = whole.valve!.line.values.filter((value) => value !== null);
    expect(Math.min(...shares)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...shares)).toBeLessThanOrEqual(1);
    expect(whole.suction!.line.times.length).toBeLessThanOrEqual(800);
    expect(whole.suction!.target).not.toBeNull();
  });

  test('mark the findings of the circuit and those of its rack that cover it', () => {
    expect(whole.findings.map(({ id }) => id)).toEqual(['upward-drift-M01-air-1']);
    const covered = circuitSeries(log, signals, 'M03', log.grid.startMs, endOf(log), 400, diagnosis.findings);
    expect(covered.findings.map(({ id }) => id)).toEqual(['rack']);
  });

  test('cut defrosts to the window that is asked for', () => {
    const from = log.grid.startMs + 86_400_000;
    const day = circuitSeries(log, signals, 'M01', from, from + 86_400_000, 400);
    expect(day.defrosts.length).toBeGreaterThanOrEqual(3);
    expect(day.defrosts.every((span) => span.from >= day.span.from && span.to <= day.span.to + 300_000)).toBe(
      true,
    );
  });

  test('refuse a circuit that the log does not have', () => {
    expect(() => circuitSeries(log, signals, 'X99', 0, 1, 10)).toThrow('no circuit X99');
  });
});
