import { describe, expect, it } from 'vitest';
import { judge } from '../../src/diagnosis/judge.ts';
import { evidence, findings, onDay, one, quietSignals, rackHigh, recovery } from './support.ts';

describe('valves in step', () => {
  const inStep = evidence({
    analysis: 'short-cycling',
    kind: 'short-cycling',
    shape: 'in-step',
    circuit: null,
    features: { inStep: 0.8 },
  });
  const machine = { ...inStep, shape: 'compressor', points: ['comp 2'], certainty: 0.95, features: {} };
  const valve = (circuit: string) =>
    evidence({
      analysis: 'short-cycling',
      kind: 'short-cycling',
      shape: 'valve',
      circuit,
      points: [`${circuit} valve`],
    });

  it('do no harm while nothing starts too often', () => {
    expect(one(inStep).severity).toBe('note');
  });

  it('are one finding with the machine that starts too often, in place of the valves', () => {
    const finding = one(inStep, machine, valve('M01'), valve('M02'));
    expect(finding).toMatchObject({
      severity: 'watch',
      origin: 'control',
      circuit: null,
      covers: ['M01', 'M02'],
    });
    expect(finding.causes[0]!.cause).toBe('circuits-in-step');
    expect(finding.summary).toContain('comp 2');
  });

  it('do not explain a valve that was pulsed at another time', () => {
    expect(findings(inStep, { ...valve('M01'), onset: onDay(10) })).toHaveLength(2);
  });

  it('that wear a machine explain a valve that passes the limit later, and what short strokes do to the rest', () => {
    const superheat = evidence({
      analysis: 'superheat',
      kind: 'superheat',
      shape: 'starving',
      circuit: 'M02',
    });
    const longer = recovery({ shape: 'extended', circuit: 'M03', certainty: 0.95 });
    const finding = one(inStep, machine, { ...valve('M01'), onset: onDay(10) }, superheat, longer);
    expect(finding.covers).toEqual(['M01', 'M02', 'M03']);
    const harmless = findings(inStep, superheat, { ...longer, onset: onDay(9) });
    expect(harmless.map(({ circuit }) => circuit).sort()).toEqual([null, 'M02', 'M03'].sort());
  });

  it('that the logging cannot show are one finding where half of the valves begin to cycle at one time', () => {
    const valves = ['M01', 'M02', 'M03'].map((id, i) => ({ ...valve(id), onset: onDay(5 + 0.2 * i) }));
    const finding = one(...valves);
    expect(finding).toMatchObject({ circuit: null, suctionGroup: 'S1', covers: ['M01', 'M02', 'M03'] });
    expect(finding.causes[0]!.cause).toBe('circuits-in-step');
    expect(finding.summary).toContain('began at one time');
    const apart = valves.map((one, i) => ({ ...one, onset: onDay(3 + 3 * i) }));
    expect(findings(...apart)).toHaveLength(3);
  });

  it('that begin with a machine of the group are one finding with it, be they only two', () => {
    const finding = one(machine, valve('M01'), valve('M02'));
    expect(finding).toMatchObject({ circuit: null, covers: ['M01', 'M02'] });
    expect(finding.summary).toContain('comp 2 starts too often for it, and it shows in M01, M02');
    expect(findings(machine, valve('M01'))).toHaveLength(2);
    expect(findings({ ...machine, onset: onDay(1) }, valve('M01'), valve('M02'))).toHaveLength(3);
  });

  it('and pass their limit on busy days, some days later, are in step all the same', () => {
    const later = ['M01', 'M02'].map((id) => ({ ...valve(id), onset: onDay(8.5) }));
    expect(one(inStep, ...later).covers).toEqual(['M01', 'M02']);
    expect(one(inStep, { ...valve('M01'), onset: onDay(7.5) }).severity).toBe('watch');
  });

  it('of which there are only two are one finding where both start too often, and else say nothing of it', () => {
    const pair = { ...inStep, features: { ...inStep.features, valves: 2 } };
    expect(one(pair, valve('M01'), valve('M02'))).toMatchObject({ circuit: null, covers: ['M01', 'M02'] });
    expect(findings(pair)).toEqual([]);
    expect(one(pair, valve('M01')).circuit).toBe('M01');
    expect(one(pair, machine)).toMatchObject({ circuit: null, summary: expect.stringContaining('comp 2') });
  });

  it('that start too often by the air alone are watched, with no valve to flag', () => {
    const byAir = { ...inStep, features: { inStep: 0.8, valves: 2, byAir: 1, tooOften: 1 } };
    const finding = one(byAir);
    expect(finding).toMatchObject({ severity: 'watch', origin: 'control', circuit: null });
    expect(finding.causes[0]!.cause).toBe('circuits-in-step');
    expect(finding.summary).toContain('valves, which are not logged');
    expect(finding.summary).toContain('they start too often');
    const slow = { ...inStep, features: { ...byAir.features, valves: 5, tooOften: 0 } };
    expect(one(slow).severity).toBe('note');
    expect(one(byAir, { ...valve('M01'), shape: 'valve-inferred', features: { byAir: 1 } }).covers).toEqual([
      'M01',
    ]);
  });

  it('feed in strokes after a defrost, too: a recovery that is longer since that day, and no longer with the days', () => {
    const minutes: { [name: string]: (day: number) => number } = {
      'since that day': (day) => (day < 5 ? 12 : 20),
      'more each day': (day) => (day < 5 ? 12 : 12 + 3 * (day - 4)),
      'before it': (day) => (day < 2 ? 12 : 20),
    };
    const covered = Object.entries(minutes).map(([name, recoveryOn]) => {
      const circuits = quietSignals.circuits.map((circuit) => ({
        ...circuit,
        probes: circuit.probes.map((probe) => ({
          ...probe,
          recovery: probe.recovery.map((_, day) => recoveryOn(day)),
        })),
      }));
      const seen = [inStep, machine, recovery({ shape: 'lengthening', onset: onDay(4) })];
      return [
        name,
        judge({ ...quietSignals, circuits }, { evidence: seen, abstentions: [] }).findings.length === 1,
      ];
    });
    expect(Object.fromEntries(covered)).toEqual({
      'since that day': true,
      'more each day': false,
      'before it': false,
    });
  });

  it('take a recovery that its own analysis dates weeks before, where it was as at first until they fell into step', () => {
    const told = (from: number) => {
      const circuits = quietSignals.circuits.map((circuit) => ({
        ...circuit,
        probes: circuit.probes.map((probe) => ({
          ...probe,
          recovery: probe.recovery.map((_, day) => (day < from ? 12 : 20)),
        })),
      }));
      const step = { onset: onDay(9) };
      const seen = [
        { ...inStep, ...step },
        { ...machine, ...step },
        recovery({ shape: 'lengthening', onset: onDay(0.5) }),
      ];
      return judge({ ...quietSignals, circuits }, { evidence: seen, abstentions: [] }).findings.length;
    };
    expect(told(9)).toBe(1);
    expect(told(5)).toBe(2);
  });

  it('that hardly ever shut, for their rack cannot satisfy them, are not said to open and shut together', () => {
    const full = rackHigh({ features: { shareWarm: 0.2, allRunningShare: 0.9 } });
    const warm = rackHigh({ shape: 'high', features: { shareWarm: 0.8, allRunningShare: 0.4 } });
    for (const rack of [full, warm]) expect(one(rack, inStep).kind).toBe('rack-pressure');
    const spare = rackHigh({ shape: 'high', features: { shareWarm: 0.2, allRunningShare: 0.4 } });
    expect(findings(spare, inStep)).toHaveLength(2);
    const fed = { ...inStep, features: { ...inStep.features, shareFull: 0.75 } };
    expect(one(spare, fed).kind).toBe('rack-pressure');
    const before = { ...rackHigh({ features: full.features }), onset: onDay(11) };
    expect(findings(before, inStep)).toHaveLength(2);
    expect(findings(full, inStep, machine)).toHaveLength(2);
  });

  it('and fast: superheat that never settles in such strokes is part of it', () => {
    const superheat = evidence({
      analysis: 'superheat',
      kind: 'superheat',
      shape: 'starving',
      onset: onDay(6),
    });
    const finding = one(valve('M01'), superheat);
    expect(finding.kind).toBe('short-cycling');
    expect(finding.summary).toContain('M01 valve starts too often');
    expect(findings(valve('M01'), { ...superheat, onset: onDay(1) })).toHaveLength(2);
  });
});
