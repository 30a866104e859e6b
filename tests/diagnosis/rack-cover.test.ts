import { describe, expect, it } from 'vitest';
import { judge } from '../../src/diagnosis/judge.ts';
import type { Evidence } from '../../src/model/evidence.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { handMadeStore, still } from '../analyses/support/hand-made-store.ts';
import { evidence, findings, onDay, one, quietSignals, rackHigh, recovery, wholeRise } from './support.ts';

describe('a rack fault', () => {
  it('is one finding in place of its circuits, and lists them', () => {
    const finding = one(rackHigh(), wholeRise(), recovery({ circuit: 'M02', onset: onDay(5.5) }));
    expect(finding).toMatchObject({
      kind: 'rack-pressure',
      origin: 'rack',
      severity: 'act',
      covers: ['M01', 'M02'],
    });
  });

  it('is not said to have warmed circuits whose air stayed where it was', () => {
    const slow = recovery({ onset: onDay(5.5) });
    expect(one(rackHigh({ features: { shareWarm: 1 } }), slow).summary).toContain('M01 went warm with it');
    const unfelt = one(rackHigh({ features: { shareWarm: 0 } }), slow).summary;
    expect(unfelt).toContain('it shows in M01');
    expect(unfelt).not.toContain('warm');
  });

  it('does not hide a probe far from its own neighbours, nor what was there before', () => {
    const far = evidence({ probe: 'M01 air A', features: { shift: 2.3 } });
    const near = evidence({ circuit: 'M02', probe: 'M02 air A', features: { shift: 2.1 } });
    const before = wholeRise({ circuit: 'M03', onset: onDay(2), shape: 'step' });
    const kept = findings(rackHigh({ onset: onDay(5) }), far, near, before).map(({ circuit }) => circuit);
    expect(kept.sort()).toEqual([null, 'M01', 'M03'].sort());
  });

  it('takes probes that parted for some days, no farther than it warmed their circuit, while it did', () => {
    const signals = computeSignals(
      handMadeStore({
        days: 20,
        circuits: ['M01', 'M02', 'M03'].map((id) => ({
          id,
          probes: [still, still, still],
          together: (day) => 3 * Math.min(1, Math.max(0, (day - 8) / 3)),
        })),
      }),
    );
    const told = (parted: Partial<Evidence>) => {
      const probe = evidence({
        probe: 'M01 air A',
        features: { shift: -2.6 },
        onset: onDay(12),
        end: onDay(15),
        ...parted,
      });
      const seen = { evidence: [rackHigh({ onset: onDay(8) }), probe], abstentions: [] };
      return judge(signals, seen).findings.map(({ circuit }) => circuit);
    };
    expect(told({})).toEqual([null]);
    expect(told({ end: null })).toContain('M01');
    expect(told({ features: { shift: 4 } })).toContain('M01');
    expect(told({ onset: onDay(7) })).toContain('M01');
  });

  it('takes a recovery that began to lengthen a little earlier, but no defrosts that did not come', () => {
    const slow = recovery({ shape: 'not-recovered', onset: onDay(0.5) });
    const missed = recovery({ kind: 'defrost-missed', shape: 'missed', circuit: 'M02' });
    const all = findings(rackHigh(), slow, missed);
    expect(all.map(({ kind }) => kind).sort()).toEqual(['defrost-missed', 'rack-pressure']);
  });

  it('takes defrosts that end sooner with it, for a warm coil is soon warm enough, and none that ended so before', () => {
    expect(one(rackHigh(), recovery({ shape: 'ended-early', certainty: 0.95 })).covers).toEqual(['M01']);
    const before = recovery({ shape: 'ended-early', onset: onDay(1) });
    expect(findings(rackHigh({ onset: onDay(10) }), before)).toHaveLength(2);
  });

  it('takes a rise that its own analysis dates too early, when it was not there until the rack failed', () => {
    const rackRise = (day: number): number => (day < 8 ? 0 : 1.5);
    const oldRise = (day: number): number => (day < 5 ? 0 : 1.5);
    const signals = computeSignals(
      handMadeStore({
        days: 14,
        circuits: ['M01', 'M02', 'M03'].map((id) => ({
          id,
          probes: [still, still, still],
          together: id === 'M02' ? oldRise : rackRise,
        })),
      }),
    );
    const dated = ['M01', 'M02'].map((circuit) => wholeRise({ circuit, onset: onDay(5), shape: 'step' }));
    const seen = { evidence: [rackHigh({ onset: onDay(8) }), ...dated], abstentions: [] };
    expect(judge(signals, seen).findings.map(({ circuit }) => circuit)).toEqual([null, 'M02']);
  });

  it('takes a valve dated before it that feeds all it can since, as its peers do, in air no warmer than theirs', () => {
    /** A humid spell, then the rack. */
    const warmth = (day: number, since: number): number =>
      day < 12 ? 0 : day < 15 ? 0.8 : 0.8 + (since - 0.8) * Math.min(1, (day - 15) / 3);
    const store = (warmer: number, dutyOf: (day: number) => number, peersFeed = 1) => {
      const signals = computeSignals(
        handMadeStore({
          days: 30,
          circuits: ['M01', 'M02', 'M03'].map((id) => ({
            id,
            probes: [still, still, still],
            together: (day) => warmth(day, id === 'M01' ? 1.2 + warmer : 1.2),
          })),
        }),
      );
      const circuits = signals.circuits.map((circuit) => ({
        ...circuit,
        duty: circuit.duty.map((_, day) => {
          if (circuit.circuit.id === 'M01') return dutyOf(day);
          return day < 15 ? 0.5 : peersFeed;
        }),
      }));
      const valve = wholeRise({
        shape: 'duty',
        onset: onDay(5),
        features: { dutyNow: 1, dutyFull: 0.92, rampDays: 12 },
      });
      const seen = { evidence: [rackHigh({ onset: onDay(15) }), valve], abstentions: [] };
      return judge({ ...signals, circuits }, seen).findings.map(({ circuit }) => circuit);
    };
    const withRack = (day: number) => (day < 10 ? 0.5 : day < 15 ? 0.65 : 1);
    expect(store(0, withRack)).toEqual([null]);
    expect(store(0.8, withRack)).toEqual([null, 'M01']);
    expect(store(0, (day) => (day < 6 ? 0.5 : day < 15 ? 0.85 : 1))).toEqual([null, 'M01']);
    expect(store(0, withRack, 0.7)).toEqual([null, 'M01']);
  });

  it('takes defrosts that only the air of a circuit would show, once that is warm', () => {
    const log = handMadeStore({
      days: 14,
      circuits: ['M01', 'M02', 'M03'].map((id) => ({
        id,
        probes: [still, still, still],
        together: (day) => (id === 'M03' || day < 8 ? 0 : 1.5),
      })),
    });
    const withoutStatus = log.circuits.map((one) => ({
      ...one,
      valve: null,
      defrost: { ...one.defrost, status: null },
    }));
    const missed = ['M01', 'M03'].map((circuit) =>
      recovery({ kind: 'defrost-missed', shape: 'missed', circuit, onset: onDay(9) }),
    );
    const seen = { evidence: [rackHigh({ onset: onDay(8) }), ...missed], abstentions: [] };
    const told = (circuits: typeof log.circuits) =>
      judge(computeSignals({ ...log, circuits }), seen).findings.map(({ circuit }) => circuit);
    expect(told(withoutStatus).sort()).toEqual([null, 'M03'].sort());
    expect(told(log.circuits).sort()).toEqual([null, 'M01', 'M03'].sort());
  });

  it('takes a group short of suction under a high condensing pressure for one trouble, the condenser first', () => {
    const condensing = rackHigh({ shape: 'condensing-high', features: { condensingRise: 9, note: 0 } });
    const finding = one(rackHigh({ onset: onDay(6), features: { shareWarm: 1 } }), condensing);
    expect(finding.causes[0]?.cause).toBe('condensing');
    expect(finding.severity).toBe('act');
    expect(one(rackHigh()).causes[0]?.cause).toBe('capacity-shortfall');
  });

  const superheat = (given: Partial<Evidence> = {}) =>
    evidence({ analysis: 'superheat', kind: 'superheat', shape: 'starving', onset: onDay(5.5), ...given });

  it('takes superheat and longer defrosts that came with a suction that stands elsewhere, warm or not', () => {
    const longer = recovery({ shape: 'extended', circuit: 'M02', certainty: 0.95, onset: onDay(6) });
    const left = rackHigh({ shape: 'target-left' });
    expect(one(left, superheat(), longer).covers).toEqual(['M01', 'M02']);
    expect(one(left, superheat()).summary).toContain('it shows in M01');
    expect(one(rackHigh(), superheat(), longer).covers).toEqual(['M01', 'M02']);
    const before = superheat({ onset: onDay(1) });
    expect(findings(rackHigh({ shape: 'target-left', onset: onDay(8) }), before)).toHaveLength(2);
    expect(findings(rackHigh({ shape: 'condensing-high' }), superheat())).toHaveLength(2);
    expect(findings(left, recovery({ shape: 'weak-rise', certainty: 0.95 }))).toHaveLength(2);
  });

  it('takes a recovery that is dated from the start, when it only lengthened with it', () => {
    const slowFrom = (from: number) => {
      const minutes = (day: number): number => (day < from ? 0 : 1);
      const signals = computeSignals(
        handMadeStore({
          days: 14,
          circuits: ['M01', 'M02', 'M03'].map((id) => ({ id, probes: [still, still, still] })),
        }),
      );
      const circuits = signals.circuits.map((circuit) => ({
        ...circuit,
        probes: circuit.probes.map((probe) => ({
          ...probe,
          recovery: probe.recovery.map((_, day) => 12 + 15 * minutes(day)),
        })),
      }));
      const seen = [rackHigh({ onset: onDay(9) }), recovery({ shape: 'lengthening', onset: onDay(0.5) })];
      return judge({ ...signals, circuits }, { evidence: seen, abstentions: [] }).findings;
    };
    expect(slowFrom(9)).toHaveLength(1);
    expect(slowFrom(5)).toHaveLength(2);
    expect(slowFrom(0)).toHaveLength(2);
  });

  it('whose pressure no circuit feels is watched', () => {
    expect(one(rackHigh({ features: { shareWarm: 0 } })).severity).toBe('watch');
    expect(one(rackHigh({ features: { shareWarm: 0 }, end: onDay(12) })).severity).toBe('note');
    expect(one(rackHigh({ shape: 'high' })).summary).toContain('its usual level');
    expect(one(rackHigh({ shape: 'high', features: { overTarget: 1 } })).summary).toContain('its target');
  });

  it('hides nothing when it is only a visit, or not believed', () => {
    expect(findings(rackHigh({ shape: 'service-visit', end: onDay(5.3) }), wholeRise())).toHaveLength(2);
    expect(findings(rackHigh({ certainty: 0.2 }), wholeRise())).toHaveLength(2);
  });
});

describe('a rack that is high in warm hours and back every night', () => {
  const spell = (features: Evidence['features'], given: Partial<Evidence> = {}) =>
    rackHigh({ features: { backEveryNight: 1, limitReached: 0, shareWarm: 1, ...features }, ...given });

  it.each<[string, Evidence, string, string]>([
    ['in weather that explains it', spell({ weatherExplains: 1 }), 'note', 'weather'],
    ['as it was before, and healed', spell({ spellBefore: 1 }), 'note', 'weather'],
    ['and is over', spell({ weatherExplains: 0 }, { end: onDay(12) }), 'note', 'weather'],
    ['and nothing tells why', spell({}), 'watch', 'capacity-shortfall'],
    [
      'in weather that it bore before',
      spell({ weatherExplains: 0, spellBefore: 1 }),
      'act',
      'capacity-shortfall',
    ],
    [
      'while air is at its limit',
      spell({ weatherExplains: 1, limitReached: 1 }),
      'act',
      'capacity-shortfall',
    ],
    [
      'with a machine that no longer runs',
      spell({ spellBefore: 1, deadCompressors: 1 }),
      'act',
      'capacity-shortfall',
    ],
    [
      'but not in fact every night',
      spell({ weatherExplains: 1, backEveryNight: 0 }),
      'act',
      'capacity-shortfall',
    ],
  ])('%s', (_, seen, severity, cause) => {
    const finding = one(seen);
    expect(finding).toMatchObject({ severity, origin: 'rack' });
    expect(finding.causes[0]!.cause).toBe(cause);
    expect(finding.summary.includes('back every night')).toBe(severity !== 'act');
  });

  it('hides nothing of its circuits: what lasts there is no weather', () => {
    const rise = wholeRise({ circuit: 'M02' });
    expect(findings(spell({ weatherExplains: 1 }), rise)).toHaveLength(2);
    expect(findings(spell({}), rise)).toHaveLength(1);
  });
});

describe('a suction target that was changed', () => {
  const kiloPascal = (name: string, value: number) => ({ name, value, low: null, high: null, unit: 'kPa' });
  const changed = (shape: string, of: 'target' | 'suction', features: Evidence['features'] = {}) =>
    rackHigh({
      shape,
      measures: [
        kiloPascal(`${of}Before`, 474.4),
        kiloPascal(`${of}Now`, 419.8),
        { name: 'feedingChange', value: -14, low: null, high: null, unit: '%' },
      ],
      features: { fromColumn: of === 'target' ? 1 : 0, reached: 1, ...features },
    });

  it('is a remark with both values, and by its column nobody doubts it', () => {
    const logged = one(changed('target-lowered', 'target'));
    expect(logged).toMatchObject({ severity: 'note', origin: 'control', circuit: null });
    expect(logged.causes.map(({ cause }) => cause)).toEqual(['set-point']);
    expect(logged.summary).toMatch(
      /from 54\.1 psig to 46\.2 psig .* feed 14 % less of the time; ask who changed it/,
    );
    const seen = one(changed('target-lowered', 'suction'));
    expect(seen.causes.map(({ cause }) => cause)).toEqual(['set-point', 'compressor-control']);
    expect(seen.summary).toContain('its target was probably changed; ask who and why');
  });

  it('stands for superheat that is read against it', () => {
    const superheat = evidence({ analysis: 'superheat', kind: 'superheat', shape: 'starving' });
    const finding = one(changed('target-lowered', 'target'), superheat);
    expect(finding).toMatchObject({ severity: 'note', covers: ['M01'] });
    expect(finding.summary).toContain('it shows in M01');
  });

  it('says so when the pressure does not follow it', () => {
    const { summary } = one(changed('target-lowered', 'target', { reached: 0 }));
    expect(summary).toContain('though the pressure does not follow it');
  });

  it('is acted on where it was raised and its circuits warm', () => {
    expect(one(changed('target-raised', 'target', { shareWarm: 0.2 })).severity).toBe('note');
    expect(one(changed('target-raised', 'target', { shareWarm: 0.8 })).severity).toBe('act');
  });
});

describe('valves in step', () => {
  const inStep = evidence({
    analysis: 'short-cycling',
    kind: 'short-cycling',
    shape: 'in-step',
    circuit: null,
    features: { inStep: 0.8 },
  });
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
    const machine = { ...inStep, shape: 'compressor', points: ['comp 2'], certainty: 0.95, features: {} };
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
    const machine = { ...inStep, shape: 'compressor', points: ['comp 2'], certainty: 0.95, features: {} };
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
    const machine = { ...inStep, shape: 'compressor', points: ['comp 2'], certainty: 0.95, features: {} };
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
    const machine = { ...inStep, shape: 'compressor', points: ['comp 2'], certainty: 0.95, features: {} };
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
    const machine = { ...inStep, shape: 'compressor', points: ['comp 2'], certainty: 0.95, features: {} };
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

  it('that hardly ever shut, for their rack cannot satisfy them, are not said to open and shut together', () => {
    const full = rackHigh({ features: { shareWarm: 0.2, allRunningShare: 0.9 } });
    const warm = rackHigh({ shape: 'high', features: { shareWarm: 0.8, allRunningShare: 0.4 } });
    for (const rack of [full, warm]) expect(one(rack, inStep).kind).toBe('rack-pressure');
    const spare = rackHigh({ shape: 'high', features: { shareWarm: 0.2, allRunningShare: 0.4 } });
    expect(findings(spare, inStep)).toHaveLength(2);
    const before = { ...rackHigh({ features: full.features }), onset: onDay(11) };
    expect(findings(before, inStep)).toHaveLength(2);
    const machine = { ...inStep, shape: 'compressor', points: ['comp 2'], certainty: 0.95, features: {} };
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
