import { describe, expect, it } from 'vitest';
import type { Evidence } from '../../src/model/evidence.ts';
import { evidence, onDay, one, rackHigh, wholeRise } from './support.ts';

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
});
