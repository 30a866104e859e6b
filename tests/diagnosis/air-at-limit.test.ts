import { describe, expect, it } from 'vitest';
import { judge } from '../../src/diagnosis/judge.ts';
import type { Finding } from '../../src/model/finding.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import type { Signals } from '../../src/signals/types.ts';
import { type Curve, handMadeStore, still } from '../analyses/support/hand-made-store.ts';
import { evidence, onDay, threeCircuits } from './support.ts';

describe('air at its limit', () => {
  const stepped = (setPoint: number, limit: number | null, rise: number): Signals => {
    const up: Curve = (day) => (day < 6 ? 0 : rise);
    return computeSignals(
      handMadeStore({
        days: 14,
        circuits: ['M01', 'M02', 'M03'].map((id) => ({
          id,
          setPoint,
          probes: [id === 'M01' ? up : still, still, still],
          ...(limit === null ? {} : { limit }),
        })),
      }),
    );
  };
  const seen = evidence({ probe: 'M01 air A', features: { shift: 3, defrostOffsetRatio: 0.4 } });
  const judgedOn = (signals: Signals): Finding =>
    judge(signals, { evidence: [seen], abstentions: [] }).findings[0]!;

  it.each([
    ['at the alarm in force', stepped(0, 3, 4), 'act', /alarm limit of 37\.4 °F/],
    ['below the alarm in force', stepped(0, 3, 2), 'watch', /below its alarm limit/],
    // US FDA Food Code 2022, 3-501.16(A)(2): 41 °F (5 °C), held against air as a cue.
    ['over 41 °F under a wide alarm', stepped(2.5, 7.2, 3), 'act', /cold-holding limit for food of 41\.0 °F/],
    ['over 41 °F in a case set near it', stepped(4.5, 7.8, 1.5), 'watch', /below its alarm limit/],
    ['warm in a case set over 41 °F', stepped(7, null, 2), 'watch', /below the usual margin/],
  ])('of a section that went %s', (_, signals, severity, text) => {
    const finding = judgedOn(signals);
    expect(finding).toMatchObject({ origin: 'case', severity });
    expect(finding.summary).toMatch(text);
    expect(finding.summary).toContain('not food');
  });

  it.each([
    ['over it', 6, 'watch'],
    ['under it', 1.5, 'note'],
  ])(
    'of a case that stepped up as if it had been set so, with no set point logged, %s',
    (_, by, severity) => {
      const together: Curve = (day) => (day < 6 ? 0 : by);
      const signals = threeCircuits(14, (id) => ({ limit: 7, ...(id === 'M01' ? { together } : {}) }));
      const features = {
        ...{ rise: by, rampDays: 1, daysSince: 8, levelled: 1, ownRise: by, compared: 1, swingRatio: 0.95 },
        ...{
          peakLag: -by,
          riseRateRatio: 0.9,
          riseRateRatioError: 0.02,
          dayNightRatio: 0,
          setPointChange: by,
        },
      };
      const whole = evidence({ analysis: 'upward-drift', kind: 'upward-drift', features, onset: onDay(6) });
      const finding = judge(signals, { evidence: [whole], abstentions: [] }).findings[0]!;
      expect(finding.causes[0]!.cause).toBe('set-point');
      expect(finding.severity).toBe(severity);
    },
  );

  // The case was meant to stand at 37 °F; where it stands now is held against the limit of that.
  it.each([
    [
      'under it',
      1,
      'note',
      /ask who and why; its settled air, which is not food, .* below the cold-holding limit/,
    ],
    [
      'over it',
      3,
      'watch',
      /ask who and why; its settled air, which is not food, .* at or over the cold-holding limit/,
    ],
    ['colder', -2, 'note', /ask who and why\.$/],
  ])('of a case whose set point was changed, %s', (_, by, severity, text) => {
    const setPoint = 25 / 9;
    const together: Curve = (day) => (day < 6 ? 0 : by);
    const signals = computeSignals(
      handMadeStore({
        days: 14,
        circuits: ['M01', 'M02', 'M03'].map((id) => ({
          id,
          setPoint,
          probes: [still, still, still],
          ...(id === 'M01' ? { together } : {}),
        })),
      }),
    );
    const measure = (name: string, value: number) => ({ name, value, low: null, high: null, unit: 'Cel' });
    const changed = evidence({
      analysis: 'left-off',
      kind: 'left-off',
      shape: 'set-point-changed',
      measures: [measure('setPointBefore', setPoint), measure('setPointNow', setPoint + by)],
      features: { setPointChange: by, fromColumn: 0, dutyChange: -0.1 * by },
    });
    const finding = judge(signals, { evidence: [changed], abstentions: [] }).findings[0]!;
    expect(finding).toMatchObject({ kind: 'left-off', origin: 'control', severity });
    expect(finding.summary).toMatch(text);
    expect(finding.notThis).toHaveLength(1);
  });

  it('counts for no probe that lies', () => {
    const lie = evidence({ probe: 'M01 air A', features: { shift: 3, defrostOffsetRatio: 1, riseRatio: 1 } });
    const [finding] = judge(stepped(0, 3, 4), { evidence: [lie], abstentions: [] }).findings;
    expect(finding).toMatchObject({ origin: 'probe', severity: 'watch', projection: null });
  });
});
