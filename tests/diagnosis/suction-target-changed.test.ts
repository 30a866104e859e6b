import { describe, expect, it } from 'vitest';
import type { Evidence } from '../../src/model/evidence.ts';
import { evidence, findings, onDay, one, rackHigh, wholeRise } from './support.ts';

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
    const warm = ['M01', 'M02'].map((circuit) => wholeRise({ circuit, onset: onDay(5.5) }));
    const raised = (...rises: Evidence[]) =>
      one(changed('target-raised', 'target', { shareWarm: 0.2 }), ...rises);
    expect(raised(...warm)).toMatchObject({ severity: 'watch', covers: ['M01', 'M02'] });
    expect(raised(warm[0]!).severity).toBe('note');
  });

  describe('left elsewhere by a visit', () => {
    const left = (targetMoved: number, given: Partial<Evidence> = {}) =>
      rackHigh({
        shape: 'target-left',
        onset: onDay(5),
        certainty: 0.85,
        features: { targetMoved },
        ...given,
      });
    const raised = (shareWarm: number) => changed('target-raised', 'target', { shareWarm, fromColumn: 1 });

    it('is the same finding as a target that is raised since, and acted on where half of its circuits are warm', () => {
      const warm = one(left(2.4), { ...raised(0.8), certainty: 0.99 });
      expect(warm).toMatchObject({ origin: 'control', severity: 'act' });
      expect(warm.summary).toContain('still where a visit left it');
      expect(one(left(2.4), raised(0.4)).severity).toBe('watch');
      expect(one(left(2.4)).severity).toBe('watch');
    });

    it('stands for cut-outs at a lower pressure and for a float that stands still since, and for none of before', () => {
      const trips = (day: number) => rackHigh({ shape: 'low-pressure-trips', onset: onDay(day) });
      const stopped = (day: number) => rackHigh({ shape: 'float-stopped', onset: onDay(day) });
      expect(one(left(-3.4), trips(5.5)).summary).toContain('still where a visit left it');
      expect(one(left(2.4), stopped(7.4)).summary).toContain('still where a visit left it');
      expect(one(raised(0.8), stopped(5.2))).toMatchObject({ origin: 'rack', severity: 'act' });
      expect(findings(left(2.4), trips(5.5))).toHaveLength(2);
      expect(findings(left(-3.4), trips(2))).toHaveLength(2);
      expect(findings(left(2.4), stopped(2))).toHaveLength(2);
      // A float that its load holds at an end is a remark, and makes none of the target.
      const held = { ...stopped(7.4), features: { note: 1 } };
      expect(findings(left(2.4), held).map(({ severity }) => severity)).toEqual(['watch', 'note']);
    });
  });

  it('is not asked for machines that are cut out again and again and hold no pressure meanwhile: that is one trouble', () => {
    const trips = rackHigh({ shape: 'low-pressure-trips', onset: onDay(5.2), certainty: 0.9 });
    const high = (day: number) =>
      rackHigh({ shape: 'high', onset: onDay(day), features: { shareWarm: 0.6 } });
    expect(one(high(5), trips).severity).toBe('act');
    expect(findings(high(9), trips)).toHaveLength(2);
    // Valves in step are no reason to say less of a rack that warms its circuits.
    const step = evidence({
      analysis: 'short-cycling',
      kind: 'short-cycling',
      circuit: null,
      shape: 'in-step',
    });
    const kinds = findings(high(5), trips, step).map(({ kind }) => kind);
    expect(kinds).toContain('rack-pressure');
  });
});
