import { describe, expect, it } from 'vitest';
import { type Hypothesis, weigh } from '../../src/diagnosis/naive-bayes.ts';
import { oneProbeCauses, oneProbeFeatures } from '../../src/diagnosis/one-probe-causes.ts';
import { wholeCircuitCauses, wholeCircuitFeatures } from '../../src/diagnosis/whole-circuit-causes.ts';

const likeliest = (features: { [name: string]: number }, shape: string) =>
  weigh(oneProbeCauses, oneProbeFeatures(features, shape))[0]!.hypothesis;

describe('weigh', () => {
  const two: Hypothesis[] = [
    { cause: 'drain', origin: 'case', prior: 0.5, features: { x: { mean: 0, deviation: 1 } } },
    { cause: 'logging', origin: 'record', prior: 0.5, features: { x: { mean: 4, deviation: 1 } } },
  ];

  it('gives back the priors when the log gave no feature', () => {
    expect(weigh(two, {}).map(({ likelihood }) => likelihood)).toEqual([0.5, 0.5]);
  });

  it('follows the feature, and sums to one', () => {
    const [first, second] = weigh(two, { x: 4 });
    expect(first!.hypothesis.cause).toBe('logging');
    expect(first!.likelihood).toBeGreaterThan(0.85);
    expect(first!.likelihood + second!.likelihood).toBeCloseTo(1, 12);
  });

  it('lets no single feature decide for ever: the floor under every bump caps it', () => {
    expect(weigh(two, { x: 400 })[0]!.likelihood).toBeLessThan(0.6);
  });

  it('is never surer than the chance that the table knows the plant', () => {
    const ten = Object.fromEntries(
      Array.from({ length: 10 }, (_, i) => [`x${i}`, { mean: 0, deviation: 1 }]),
    );
    const far = Object.fromEntries(Object.keys(ten).map((name) => [name, { mean: 4, deviation: 1 }]));
    const many: Hypothesis[] = [
      { ...two[0]!, features: ten },
      { ...two[1]!, features: far },
    ];
    const seen = Object.fromEntries(Object.keys(ten).map((name) => [name, 0]));
    expect(weigh(many, seen)[0]!.likelihood).toBeLessThanOrEqual(0.95);
  });

  it('says of each feature which cause it favours and which it speaks against', () => {
    const [first, second] = weigh(two, { x: 4 });
    expect(first!.leanings.x).toBeGreaterThan(0);
    expect(second!.leanings.x).toBeLessThan(0);
  });

  it('trusts an uncertain feature less', () => {
    const sure = weigh(two, { x: 3 })[0]!.likelihood;
    const unsure = weigh(two, { x: 3, xError: 3 })[0]!.likelihood;
    expect(unsure).toBeLessThan(sure);
  });
});

describe('truth or lie', () => {
  // Medians of the founders' simulations with a section model (domain notes R2), not field data.
  it.each([
    [
      'ice',
      { shift: 2, defrostOffsetRatio: -2.5, dayNightRatio: 0.7, riseRatio: 0.16 },
      'creep',
      'airflow-or-ice',
    ],
    [
      'lost airflow',
      { shift: 2, defrostOffsetRatio: 0.64, dayNightRatio: 0.32, riseRatio: 0.9 },
      'creep',
      'airflow-or-ice',
    ],
    [
      'a stopped fan',
      { shift: 3, defrostOffsetRatio: 0.65, dayNightRatio: 0.32, riseRatio: 0.9 },
      'step',
      'evaporator-fan',
    ],
    [
      'a lying probe',
      { shift: 3, defrostOffsetRatio: 0.9, dayNightRatio: 0.02, riseRatio: 0.97 },
      'step',
      'probe-offset',
    ],
    [
      'a creeping probe',
      { shift: 2, defrostOffsetRatio: 0.9, dayNightRatio: -0.05, riseRatio: 0.97 },
      'creep',
      'probe-drift',
    ],
    [
      'store air that comes in at one end, in defrost as well',
      {
        shift: 3,
        defrostOffsetRatio: 1.05,
        dayNightRatio: 0.3,
        riseRatio: 1,
        inconstancy: 0.07,
        wanderRatio: 1.9,
      },
      'step',
      'door-or-load',
    ],
    ['an open lead', { shift: 40, defrostOffsetRatio: 1, riseRatio: 0.1 }, 'step', 'probe-open-or-short'],
  ])('calls %s by its name', (_, features, shape, cause) => {
    expect(likeliest(features, shape).cause).toBe(cause);
  });

  it('blames the probe for what goes cold: a section does not cool below its neighbours', () => {
    expect(likeliest({ shift: -2 }, 'step').origin).toBe('probe');
  });

  it('leaves the origin open where no defrost and no night was seen', () => {
    const weighed = weigh(oneProbeCauses, oneProbeFeatures({ shift: 2 }, 'creep'));
    const ofProbe = weighed
      .filter(({ hypothesis }) => hypothesis.origin === 'probe')
      .reduce((sum, { likelihood }) => sum + likelihood, 0);
    expect(ofProbe).toBeGreaterThan(0.2);
    expect(ofProbe).toBeLessThan(0.5);
  });
});

describe('a whole circuit', () => {
  it('is a changed set point when it moved at once and cycles on without feeding more', () => {
    const features = { dutyRise: -0.04, swingRatio: 1, dayNightRatio: 0 };
    expect(weigh(wholeCircuitCauses, wholeCircuitFeatures(features, 'step'))[0]!.hypothesis.cause).toBe(
      'set-point',
    );
  });

  it('starves when its valve feeds all the time, hardly cycles, and superheat rose', () => {
    const features = { dutyRise: 0.35, swingRatio: 0.2, superheatRise: 10 };
    const first = weigh(wholeCircuitCauses, wholeCircuitFeatures(features, 'creep'))[0]!;
    expect(first.hypothesis.cause).toBe('underfeeding');
    expect(first.likelihood).toBeGreaterThan(0.8);
  });
});
