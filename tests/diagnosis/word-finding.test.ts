import { expect, it } from 'vitest';
import type { Evidence } from '../../src/model/evidence.ts';
import { evidence, findings, onDay, one, rackHigh, wholeRise } from './support.ts';

const creep = evidence({
  probe: 'M01 air A',
  shape: 'creep',
  features: { shift: 3, daysBefore: 8, offsetBefore: 0.2, dayNightRatio: 0.3 },
});

it('lists causes likeliest first, and what speaks against one behind a but', () => {
  const [ice] = one(creep).causes;
  expect(ice!.cause).toBe('airflow-or-ice');
  const same = evidence({
    ...creep,
    features: { shift: 3, rampDays: 6, defrostOffsetRatio: -1, dayNightRatio: 0 },
  });
  const { causes } = one(same);
  expect(causes[0]!.because).toMatch(/colder than its neighbours.*; but it is the same by day and by night/);
  expect(causes.map(({ likelihood }) => likelihood)).toEqual(
    causes.map(({ likelihood }) => likelihood).sort((a, b) => b - a),
  );
});

it('takes no slow creep of a whole circuit for a changed set point, and leaves its cause open', () => {
  const slow = wholeRise({
    features: { rise: 1.8, compared: 1, rampDays: 30, dutyRise: 0, swingRatio: 1, dayNightRatio: 0 },
  });
  const finding = one(slow);
  expect(finding).toMatchObject({ origin: 'case', severity: 'watch' });
  expect(finding.causes[0]!.cause).not.toBe('set-point');
});

it('sends to the doors first where a case warmed within an hour', () => {
  const features = {
    rise: 3,
    rampDays: 2,
    compared: 1,
    dutyRise: 0.6,
    dayNightRatio: 0.9,
    riseRateRatio: 2,
    sudden: 1,
  };
  const finding = one(wholeRise({ shape: 'step', features }));
  expect(finding.causes[0]).toMatchObject({ cause: 'door-or-load' });
  expect(finding.causes[0]!.because).toContain('it began within an hour');
  expect(finding.summary).toContain('probably a door that stands open');
  expect(finding.wouldDecide).toMatch(/doors.* first.* superheat/);
  expect(one(wholeRise()).wouldDecide).not.toContain('doors');
});

it('asks for the air of its proper place where the probe may have been moved: beside a moved one all agree', () => {
  const warm = { shift: 3, creeping: 0, defrostsUsed: 20, inconstancy: 0.42, wanderRatio: 2 };
  const fan = one({
    ...creep,
    shape: 'step',
    features: { ...warm, defrostOffsetRatio: 0.3, riseRatio: 0.84, dayNightRatio: 0.43 },
  });
  expect(fan.causes.slice(0, 2).map(({ cause }) => cause)).toEqual(['evaporator-fan', 'probe-moved']);
  expect(fan.wouldDecide).toMatch(/where M01 air . belongs.*was moved or lies/);
  const lying = { defrostOffsetRatio: 1, riseRatio: 1, dayNightRatio: 0, inconstancy: 0, wanderRatio: 1 };
  const lie = one({ ...creep, shape: 'step', features: { ...warm, ...lying } });
  expect(lie.causes[0]!.cause).toBe('probe-offset');
  expect(lie.wouldDecide).toMatch(/beside M01 air ./);
});

it('takes a circuit that is warm in trading hours for its doors, unless its defrosts of the night say that its coil lacks', () => {
  const warm = (features: Evidence['features']) =>
    one(wholeRise({ shape: 'trading-hours', features: { rise: 1.5, dayNightRatio: 1.1, ...features } }));
  const doors = warm({ nightRecoveryRatio: 1.1, nightRecoveryRise: 1 });
  expect(doors.causes[0]!.cause).toBe('door-or-load');
  expect(doors.summary).toMatch(/by night as ever: truly warm, by doors or loading/);
  const coil = warm({ nightRecoveryRatio: 1.6, nightRecoveryRise: 7 });
  expect(coil.causes.map(({ cause }) => cause)).toEqual(['underfeeding', 'airflow-or-ice', 'door-or-load']);
  expect(coil.summary).toMatch(/later from the defrosts of the night as well: .*lost capacity/);
  expect(coil.wouldDecide).toMatch(/^Superheat/);
  expect(doors.wouldDecide).toMatch(/doors/);
});

it('takes a valve that swings about the limit of hunting, as ever, for a habit', () => {
  const hunting = (huntingOverLimit: number, huntingOverUsual?: number) =>
    one(
      evidence({
        analysis: 'superheat',
        kind: 'superheat',
        shape: 'hunting',
        features: {
          superheat: 7,
          huntingOverLimit,
          ...(huntingOverUsual === undefined ? {} : { huntingOverUsual }),
        },
      }),
    ).severity;
  expect(hunting(1.05, 1.06)).toBe('note');
  expect(hunting(1.05, 1.5)).toBe('watch');
  expect(hunting(1.6, 1)).toBe('watch');
  expect(hunting(1.6)).toBe('watch');
});

it('does not act on a valve that feeds on as it did on the days before, when it went back each time', () => {
  const fedOn = (shape: string, day: number, hours: number) =>
    evidence({
      analysis: 'left-off',
      kind: 'left-off',
      shape,
      onset: onDay(day),
      end: shape === 'override-on' ? null : onDay(day + hours / 24),
      certainty: 0.95,
      features: { hours, beganCold: 1 },
    });
  const now = fedOn('override-on', 13.4, 14);
  const before = [11.4, 12.4].map((day) => fedOn('override-was-on', day, 14));
  expect(one(now).severity).toBe('act');
  expect(one(now, before[0]!).severity).toBe('act');
  expect(one(now, ...before).severity).toBe('note');
  const shorter = [11.4, 12.4].map((day) => fedOn('override-was-on', day, 8));
  expect(one(now, ...shorter).severity).toBe('act');
});

it('says what it is not, and why', () => {
  const text = one(creep).notThis.join(' ');
  for (const alike of ['set-point change', 'weather', 'stocking', 'old habit']) expect(text).toContain(alike);
});

it('is undecided when no defrost was seen, names the two hypotheses and what would decide', () => {
  const finding = one({ ...creep, features: { shift: 3, dayNightRatio: 0.15 } });
  expect(finding.summary).toContain('the data cannot tell');
  expect(finding.wouldDecide).toContain('reference thermometer');
  expect(new Set(finding.causes.map(({ cause }) => cause))).toContain('probe-drift');
  expect(new Set(finding.causes.map(({ cause }) => cause))).toContain('airflow-or-ice');
});

it('gives each cause a reason, checks and likelihoods that sum to one at most', () => {
  for (const finding of findings(creep, wholeRise({ circuit: 'M02' }), rackHigh({ onset: onDay(12) }))) {
    const sum = finding.causes.reduce((total, { likelihood }) => total + likelihood, 0);
    expect(sum).toBeLessThanOrEqual(1 + 1e-9);
    for (const cause of finding.causes) {
      expect(cause.because.length).toBeGreaterThan(10);
      expect(cause.checkFirst.length).toBeGreaterThan(0);
    }
  }
});

it('speaks of air and never of product or of safety', () => {
  for (const { summary } of findings(creep, wholeRise({ circuit: 'M02' }), rackHigh({ onset: onDay(12) }))) {
    expect(summary).not.toMatch(/product|safe|compliant|discard/i);
  }
});
