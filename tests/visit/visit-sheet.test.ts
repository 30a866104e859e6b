import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/model/finding.ts';
import type { Log } from '../../src/model/log.ts';
import { paintFor } from '../../src/reporting/terminal.ts';
import { visitReport } from '../../src/reporting/visit/visit-terminal.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { visitSheet } from '../../src/visit/visit-sheet.ts';
import { finding, ice, reportOf } from '../reporting/support/example.ts';
import { gridOf, handMadeLog, startOfHistory } from '../support/hand-made-log.ts';
import { simpleCase } from '../support/simple-case.ts';

const days = 6;
const dayMs = 86_400_000;
const grid = gridOf(days, 5);
/**
 * M01 is cold, M02 stands 4 K too warm since the third day, M03 is cold and its probe A lies by 4 K, M04 stands off
 * since the fourth day.
 */
const log: Log = handMadeLog({
  days,
  stepMinutes: 5,
  circuits: [
    simpleCase(grid, { id: 'M01' }),
    simpleCase(grid, { id: 'M02', setPoint: (minute) => (minute > 2 * 1440 ? 6.8 : 2.8) }),
    simpleCase(grid, { id: 'M03', offset: (_, probe) => (probe === 0 ? 4 : 0) }),
    simpleCase(grid, { id: 'M04', isOff: (minute) => minute > 3 * 1440 }),
  ],
}) as Log;
const signals = computeSignals({
  ...log,
  circuits: log.circuits.map((circuit) => ({ ...circuit, limits: { high: 5, minutes: 60 } })),
});

const on = (circuit: string, changes: Partial<Finding> = {}): Finding =>
  finding(log, {
    id: circuit,
    circuit,
    probe: `${circuit} air A`,
    severity: 'watch',
    onset: startOfHistory + 2 * dayMs,
    measures: [{ name: 'slope', value: 0.3, low: null, high: null, unit: 'K/d' }],
    ...changes,
  });
const sheetOf = (...findings: readonly Finding[]) =>
  visitSheet(signals, { findings, circuits: [], abstentions: [] });

describe('the order of the stops', () => {
  test('is exposure now × rate × confidence, what cannot wait before what can', () => {
    const order = (...findings: readonly Finding[]) =>
      sheetOf(...findings).stops.map(({ circuit }) => circuit);
    expect(order(on('M01'), on('M02'))).toEqual(['M02', 'M01']);
    expect(order(on('M01', { severity: 'act' }), on('M02'))).toEqual(['M01', 'M02']);
    const quick = [{ name: 'slope', value: 0.9, low: null, high: null, unit: 'K/d' }];
    expect(order(on('M01'), on('M03', { measures: quick, origin: 'probe' }))).toEqual(['M03', 'M01']);
    expect(order(on('M01', { confidence: 0.6 }), on('M03', { origin: 'probe' }))).toEqual(['M03', 'M01']);
  });

  test('counts the air of a probe that lies for nothing', () => {
    const [stop] = sheetOf(on('M03', { origin: 'probe' })).stops;
    expect(stop!.exposures[0]!.aboveMinutes).toBe(0);
    expect(sheetOf(on('M03')).stops[0]!.exposures[0]!.aboveMinutes).toBeGreaterThan(600);
  });

  test('counts the air of a circuit that stands off', () => {
    const [stop] = sheetOf(on('M04', { kind: 'left-off', probe: null })).stops;
    expect(stop!.exposures).toHaveLength(1);
    expect(stop!.exposures[0]!.aboveMinutes).toBe(1440);
  });

  test('counts for a rack all the circuits that it covers, the worst first', () => {
    const rack = on('S1', { circuit: null, suctionGroup: 'S1', probe: null, covers: ['M01', 'M02', 'M04'] });
    const [stop, other] = sheetOf(rack, on('M02')).stops;
    expect(stop!.exposures.map(({ circuit }) => circuit)).toEqual(['M04', 'M02', 'M01']);
    expect(stop!.weight).toBeGreaterThan(other!.weight);
  });

  test('brings the findings of one place together and leaves notes out', () => {
    const sheet = sheetOf(
      on('M01'),
      on('M01', { id: 'b', kind: 'superheat' }),
      on('M02', { severity: 'note' }),
    );
    expect(sheet.stops).toHaveLength(1);
    expect(sheet.stops[0]!.others).toHaveLength(1);
  });
});

describe('what is asked by phone first', () => {
  const abouts = (...findings: readonly Finding[]) =>
    sheetOf(...findings).phoneFirst.map(({ about }) => about);

  test('the goods before anything else, where the air was above its limit in the last day', () => {
    expect(abouts(on('M01'), on('M02'))[0]).toBe('goods');
    expect(abouts(on('M01'))).not.toContain('goods');
    expect(abouts(on('M04', { kind: 'left-off', probe: null }))).toEqual(['goods', 'switched-off']);
    const rack = on('S1', { circuit: null, suctionGroup: 'S1', probe: null, covers: ['M01', 'M02', 'M04'] });
    expect(sheetOf(rack).phoneFirst[0]).toEqual({ about: 'goods', circuits: ['M04', 'M02'] });
  });

  test('free checks: schedule, overrides, what was switched off, set points, the rack, one thermometer', () => {
    expect(abouts(on('M01', { kind: 'left-off' }))).toContain('switched-off');
    expect(abouts(on('M01', { causes: [{ ...ice, cause: 'defrost-schedule' }] }))).toContain(
      'defrost-schedule',
    );
    expect(abouts(on('M02'))).toContain('set-point');
    expect(abouts(on('M01', { circuit: null, suctionGroup: 'S1', kind: 'rack-pressure' }))).toEqual([
      'compressors',
    ]);
    const last = sheetOf(on('M01'), on('M03')).phoneFirst.at(-1);
    expect(last).toEqual({ about: 'thermometer', probes: ['M03 air A', 'M01 air A'] });
  });
});

test('the sheet at a terminal: what, since when, how sure, why, three checks, what to bring, care', () => {
  const diagnosis = { findings: [on('M02')], circuits: [], abstentions: [] };
  const text = visitReport(
    visitSheet(signals, diagnosis),
    { log, report: reportOf(), diagnosis },
    paintFor({ color: false, columns: 80 }),
  );
  for (const part of [
    'By phone first',
    'since Thu 3 Sep',
    'confidence high, 93 %',
    'ice or blocked airflow (80 %)',
    '3. Fans',
    'wet vacuum',
    'Take care',
    'Local codes',
    'not food temperatures',
  ])
    expect(text).toContain(part);
  expect(text).not.toMatch(/\bproduct is safe\b|\bsafe to\b/);
});

test('a site without findings needs no stop', () => {
  const diagnosis = { findings: [], circuits: [], abstentions: [] };
  const text = visitReport(
    visitSheet(signals, diagnosis),
    { log, report: reportOf(), diagnosis },
    paintFor({ color: false, columns: 80 }),
  );
  expect(text).toContain('No stop is needed');
});
