import { describe, expect, it } from 'vitest';
import { exampleStore } from '../../sample-logs/maker/examples.ts';
import { toLog } from '../../sample-logs/maker/to-log.ts';
import { diagnose } from '../../src/diagnosis/diagnose.ts';
import { weigh } from '../../src/diagnosis/naive-bayes.ts';
import { wholeCircuitCauses, wholeCircuitFeatures } from '../../src/diagnosis/whole-circuit-causes.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';

const seen = { dutyRise: 0.4, swingRatio: 0.5, recoveryRatio: 3, dayNightRatio: 0.3 };
const likeliest = (features: { readonly [name: string]: number }): string =>
  weigh(wholeCircuitCauses, wholeCircuitFeatures({ ...seen, ...features }, 'creep'), 0.25)[0]!.hypothesis
    .cause;

describe('a whole circuit that warms without superheat logged', () => {
  it('is told by its defrosts: held down over a coil that ices, as ever over one that lacks liquid', () => {
    expect(likeliest({ riseRateRatio: 0.48, peakLag: -3 })).toBe('airflow-or-ice');
    expect(likeliest({ riseRateRatio: 0.85, peakLag: -1 })).toBe('underfeeding');
    expect(likeliest({ peakLag: -3, defrostLengthRatio: 1.8 })).toBe('airflow-or-ice');
    expect(likeliest({ peakLag: -1, defrostLengthRatio: 0.7 })).toBe('underfeeding');
  });

  it('is no new set point where the air stands over the one that is logged', () => {
    const step = { dutyRise: -0.02, swingRatio: 1, recoveryRatio: 1, dayNightRatio: 0 };
    const named = (features: { readonly [name: string]: number }): string =>
      weigh(wholeCircuitCauses, wholeCircuitFeatures({ ...step, ...features }, 'step'))[0]!.hypothesis.cause;
    expect(named({})).toBe('set-point');
    expect(named({ overLoggedSetPoint: 1 })).not.toBe('set-point');
  });

  it('keeps to the more usual cause where its defrosts are too few to tell', () => {
    const loose = { riseRateRatio: 0.6, riseRateRatioError: 1.5 };
    expect(likeliest(loose)).toBe(likeliest({}));
  });

  it('is told from a door by how it began and by how fast shop air warms it in its defrosts', () => {
    const features = { dutyRise: 0.69, swingRatio: 0.24, dayNightRatio: 0.95, peakLag: 3.5 };
    const first = (more: { readonly [name: string]: number }, shape: string) =>
      weigh(wholeCircuitCauses, wholeCircuitFeatures({ ...features, ...more }, shape), 0.25)[0]!;
    expect(first({ riseRateRatio: 2 }, 'step').hypothesis.cause).toBe('door-or-load');
    expect(first({ riseRateRatio: 0.85, peakLag: -1, dayNightRatio: 0.3 }, 'step').hypothesis.cause).toBe(
      'underfeeding',
    );
    expect(first({ riseRateRatio: 0.85, peakLag: -1, dayNightRatio: 0.3 }, 'creep').hypothesis.cause).toBe(
      'underfeeding',
    );
    // With neither its defrosts nor its nights to tell, a sudden one leaves both possible.
    const open = weigh(
      wholeCircuitCauses,
      wholeCircuitFeatures({ dutyRise: 0.4, swingRatio: 0.6 }, 'step'),
      0.25,
    );
    expect(open[0]!.likelihood).toBeLessThan(0.6);
    expect(open.slice(0, 3).map(({ hypothesis }) => hypothesis.cause)).toContain('door-or-load');
  });

  it('is told from a door that stands open by its return air, where one is logged', () => {
    const sudden = {
      dutyRise: 0.56,
      swingRatio: 0.32,
      dayNightRatio: 0.5,
      riseRateRatio: 0.9,
      defrostLengthRatio: 0.64,
    };
    const first = (returnGap: number, shape: string): string =>
      weigh(
        wholeCircuitCauses,
        wholeCircuitFeatures({ ...sudden, returnGapLog: Math.log(returnGap) }, shape),
        0.25,
      )[0]!.hypothesis.cause;
    expect(first(4, 'step')).toBe('door-or-load');
    expect(first(2, 'step')).toBe('door-or-load');
    expect(first(0.95, 'step')).toBe('underfeeding');
    expect(first(0.9, 'creep')).toBe('underfeeding');
    expect(likeliest({ peakLag: -3, riseRateRatio: 0.5, returnGapLog: 0.4 })).toBe('airflow-or-ice');
  });

  it.each([
    ['one', 'door-ajar', 'door-or-load'],
    ['two', 'door-ajar', 'door-or-load'],
    ['one', 'underfeed', 'underfeeding'],
    ['two', 'underfeed', 'underfeeding'],
    ['one', 'circuit-drift', 'airflow-or-ice'],
  ] as const)('of simulator %s, %s, is named by its return air', (simulator, fault, cause) => {
    const store = exampleStore('healthy', {
      seed: 721,
      simulator,
      mediumCircuits: 3,
      lowCircuits: 0,
      days: 22,
      faults: [{ fault, on: 'M01', onsetDay: 10, size: 5, overDays: 8 }],
    });
    const without = ['coil-out', 'superheat', 'defrost-termination'] as const;
    const { findings } = diagnose(computeSignals(toLog(store, { logging: { intervalMinutes: 5 }, without })));
    const found = findings.find(({ circuit, severity }) => circuit === 'M01' && severity !== 'note')!;
    expect([found.kind, found.origin, found.causes[0]!.cause]).toEqual(['upward-drift', 'case', cause]);
    expect(found.causes[0]!.because).toContain('return air');
    expect(found.wouldDecide).not.toContain('No return air is logged');
    if (fault === 'door-ajar')
      expect(Math.abs(found.onset - store.truth.faults[0]!.onset)).not.toBeGreaterThan(7_200_000);
  });

  it('says which column would have told a door from too little liquid where none is logged', () => {
    const store = exampleStore('healthy', {
      seed: 721,
      mediumCircuits: 3,
      lowCircuits: 0,
      days: 22,
      faults: [{ fault: 'door-ajar', on: 'M01', onsetDay: 10, size: 5 }],
    });
    const without = ['coil-out', 'superheat', 'return-air', 'defrost-termination'] as const;
    const { findings } = diagnose(computeSignals(toLog(store, { logging: { intervalMinutes: 5 }, without })));
    const found = findings.find(({ circuit, severity }) => circuit === 'M01' && severity !== 'note')!;
    expect(found.wouldDecide).toMatch(/doors.*superheat.*No return air is logged/su);
  });

  it('gives way to a superheat that is logged', () => {
    expect(likeliest({ riseRateRatio: 0.6, peakLag: -2, superheatRise: 9 })).toBe('underfeeding');
  });

  it.each([
    ['circuit-drift', 'airflow-or-ice'],
    ['underfeed', 'underfeeding'],
  ] as const)('names the cause of a simulated %s from air, valve and defrosts alone', (fault, cause) => {
    const store = exampleStore('healthy', {
      seed: 710,
      simulator: 'one',
      mediumCircuits: 3,
      lowCircuits: 0,
      days: 22,
      faults: [{ fault, on: 'M01', onsetDay: 8, size: 5, overDays: 9 }],
    });
    const without = ['coil-out', 'superheat', 'return-air', 'defrost-termination'] as const;
    const { findings } = diagnose(computeSignals(toLog(store, { logging: { intervalMinutes: 5 }, without })));
    const found = findings.find(({ circuit, severity }) => circuit === 'M01' && severity !== 'note')!;
    expect([found.origin, found.causes[0]!.cause]).toEqual(['case', cause]);
  });
});
