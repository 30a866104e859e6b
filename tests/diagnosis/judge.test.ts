import { describe, expect, it } from 'vitest';
import { directJudgement } from '../../src/diagnosis/direct-causes.ts';
import type { Trouble } from '../../src/diagnosis/trouble.ts';
import type { Evidence } from '../../src/model/evidence.ts';
import { evidence, findings, judged, onDay, one, rackHigh, recovery, wholeRise } from './support.ts';

const heated: Trouble = {
  scope: 'defrost',
  lead: recovery(),
  evidence: [],
  circuit: null,
  group: null,
  covers: [],
};

describe('one trouble, one finding', () => {
  const iced = evidence({
    probe: 'M01 air A',
    shape: 'creep',
    features: { shift: 3, defrostOffsetRatio: -1 },
  });

  it('joins all that an iced end shows: drift, disagreement, recovery, and the valve that feeds for it', () => {
    const drift = wholeRise({ probe: 'M01 air A', points: ['M01 air A'] });
    const duty = wholeRise({ shape: 'duty', onset: onDay(3), features: { dutyRise: 0.3, dutyNow: 1 } });
    const finding = one(iced, drift, recovery({ onset: onDay(6) }), duty);
    expect(finding).toMatchObject({ kind: 'upward-drift', origin: 'case', probe: 'M01 air A' });
    expect(finding.evidence).toHaveLength(4);
  });

  it('lets a common rise stand for the smaller differences between probes that came with it', () => {
    const colder = evidence({ probe: 'M01 air B', features: { shift: -1.2 }, onset: onDay(7) });
    expect(one(wholeRise(), colder)).toMatchObject({ kind: 'upward-drift', probe: null });
  });

  it('keeps a probe that is further off than its circuit is warm', () => {
    expect(
      findings(wholeRise({ features: { rise: 1, compared: 1 } }), iced).map(({ probe }) => probe),
    ).toEqual(['M01 air A']);
  });

  it('lets a circuit that was left off explain its own air, and nothing on another circuit', () => {
    const off = evidence({
      analysis: 'left-off',
      kind: 'left-off',
      shape: 'off',
      features: { hours: 60, still: 1 },
    });
    const kinds = findings(off, wholeRise({ onset: onDay(6) }), wholeRise({ circuit: 'M02' })).map(
      ({ kind, circuit }) => [kind, circuit],
    );
    expect(kinds).toEqual([
      ['left-off', 'M01'],
      ['upward-drift', 'M02'],
    ]);
  });

  it('keeps a changed set point apart from a valve held open or a stop, whichever is the surer', () => {
    const seen = (shape: string, certainty: number) =>
      evidence({ analysis: 'left-off', kind: 'left-off', shape, certainty, features: { setPointChange: 2 } });
    for (const shape of ['override-on', 'off']) {
      const found = findings(seen(shape, 0.75), seen('set-point-changed', 0.85));
      expect(found.map(({ severity }) => severity)).toEqual(['act', 'note']);
    }
  });

  it('takes other defrosts with a case that was turned from frozen to chilled, not with a set point some degrees up', () => {
    const turned = (setPointChange: number) =>
      evidence({
        analysis: 'left-off',
        kind: 'left-off',
        shape: 'set-point-left',
        features: { setPointChange },
      });
    const shorter = recovery({ shape: 'ended-early', features: { lengthRatio: 0.5 } });
    expect(one(turned(22), shorter)).toMatchObject({ kind: 'left-off', origin: 'control' });
    expect(findings(turned(2), shorter)).toHaveLength(2);
    expect(findings(turned(22), { ...shorter, onset: onDay(2) })).toHaveLength(2);
  });

  it('takes the probes of a coil that gets no defrost any more for its frost, unless one is far from the others', () => {
    const missed = recovery({
      kind: 'defrost-missed',
      shape: 'missed',
      features: { allSince: 1, missed: 30 },
    });
    const apart = (shift: number, onset = onDay(6)) =>
      evidence({ probe: 'M01 air A', shape: 'creep', onset, features: { shift, rampDays: 5 } });
    expect(one(missed, apart(1.2), { ...apart(-1.2), probe: 'M01 air B' }).kind).toBe('defrost-missed');
    expect(findings(missed, apart(3))).toHaveLength(2);
    expect(findings(missed, apart(1.2, onDay(1)))).toHaveLength(2);
    expect(findings({ ...missed, features: { allSince: 0, missed: 5 } }, apart(1.2))).toHaveLength(2);
  });

  it('takes longer defrosts for the consequence of some that did not come', () => {
    const missed = recovery({ kind: 'defrost-missed', shape: 'missed', features: { missed: 9 } });
    const longer = recovery({ shape: 'extended', onset: onDay(7), features: { lengthRatio: 2 } });
    expect(one(missed, longer).kind).toBe('defrost-missed');
    expect(findings(missed, { ...longer, onset: onDay(2) })).toHaveLength(2);
  });

  it('takes longer defrosts for the consequence of a room that grew far too warm at once, not of one that iced for days', () => {
    const longer = recovery({ shape: 'extended', certainty: 0.95, features: { lengthRatio: 1.7 } });
    const rise = (kelvin: number, onset: number) =>
      wholeRise({ onset, features: { rise: kelvin, compared: 1 } });
    expect(one(longer, rise(16, onDay(5)))).toMatchObject({ kind: 'upward-drift', origin: 'case' });
    expect(one(longer, rise(1.2, onDay(5)))).toMatchObject({ kind: 'defrost-recovery', origin: 'defrost' });
    expect(one(longer, rise(4, onDay(7)))).toMatchObject({ kind: 'defrost-recovery', origin: 'defrost' });
    const hotter = recovery({ shape: 'overheated', certainty: 0.85, features: { terminationRise: 9 } });
    expect(one(hotter, rise(6, onDay(5)))).toMatchObject({ kind: 'upward-drift', origin: 'case' });
    expect(one(hotter, rise(1.2, onDay(5)))).toMatchObject({ kind: 'defrost-recovery', origin: 'defrost' });
  });

  it('takes no circuit that stays warm for the consequence of hours in which one probe left its neighbours', () => {
    const warm = wholeRise({ onset: onDay(5), features: { rise: 5, compared: 1 } });
    const passing = evidence({
      shape: 'episodes',
      onset: onDay(7),
      end: onDay(7.2),
      features: { shift: -4, jumps: 0 },
    });
    const stuck = evidence({ shape: 'stuck', onset: onDay(4), features: {} });
    expect(findings(warm, passing).map(({ kind }) => kind)).toContain('upward-drift');
    expect(findings(warm, stuck).map(({ kind }) => kind)).not.toContain('upward-drift');
  });

  it('keeps a superheat that is off above the valve that only feeds more for it, and under air that is warm', () => {
    const starved = evidence({
      analysis: 'superheat',
      kind: 'superheat',
      shape: 'starving',
      features: { superheat: 12, superheatRise: 7 },
    });
    const duty = wholeRise({ shape: 'duty', onset: onDay(4), features: { dutyRise: 0.2, dutyNow: 0.9 } });
    expect(one(starved, duty)).toMatchObject({ kind: 'superheat', severity: 'watch' });
    expect(one(starved, wholeRise())).toMatchObject({ kind: 'upward-drift' });
    expect(one(duty)).toMatchObject({ kind: 'upward-drift', severity: 'note' });
  });

  it('lets a circuit held in cooling explain the frost of its coil, probe by probe', () => {
    const held = evidence({
      analysis: 'left-off',
      kind: 'left-off',
      shape: 'override-on',
      features: { inCooling: 1, still: 1, climbed: 2 },
    });
    const missed = recovery({ kind: 'defrost-missed', shape: 'missed', features: { allSince: 1 } });
    const creep = evidence({
      probe: 'M01 air A',
      shape: 'creep',
      onset: onDay(3.5),
      features: { shift: 1.2, rampDays: 9 },
    });
    const finding = one(held, missed, creep, wholeRise());
    expect(finding).toMatchObject({ kind: 'left-off', origin: 'control', severity: 'act' });
    expect(finding.summary).toMatch(/held in cooling: .* no defrost has come since .* climbed by 3\.6 °F/);
    expect(finding.causes[0]!.cause).toBe('left-off');
  });

  it('takes a valve held open for what the control makes of a probe that grew too warm days before, not of one that is colder or parts later', () => {
    const held = evidence({
      analysis: 'left-off',
      kind: 'left-off',
      shape: 'override-on',
      onset: onDay(9),
      features: { beganCold: 1 },
    });
    const creep = (shift: number, onset: number) =>
      evidence({ probe: 'M01 air A', shape: 'creep', onset, features: { shift, rampDays: 8 } });
    expect(one(held, creep(3.7, onDay(3)))).toMatchObject({ probe: 'M01 air A' });
    const kinds = (...seen: Evidence[]) => findings(...seen).map(({ kind }) => kind);
    expect(kinds(held, creep(-3.7, onDay(3)))).toContain('left-off');
    expect(kinds(held, creep(3.7, onDay(9)))).toContain('left-off');
  });

  it('takes a defrost that runs to the clock for the consequence of one that hardly heats', () => {
    const weak = recovery({ shape: 'weak-rise', certainty: 0.75 });
    const long = recovery({ shape: 'extended', certainty: 0.95, onset: onDay(4) });
    expect(one(long, weak)).toMatchObject({ kind: 'defrost-recovery' });
    expect(one(weak, long).summary).toContain('hardly warmed');
    expect(findings({ ...weak, certainty: 0.95 }, long)).toHaveLength(1);
  });

  it('takes a recovery for the consequence of a probe that reads another circuit', () => {
    const swapped = evidence({ probe: 'M01 air A', points: ['M01 air A', 'M02 air A'], shape: 'swapped' });
    expect(one(swapped, recovery({ shape: 'not-recovered' })).origin).toBe('probe');
  });

  it('remarks on two defrosts of a month that did not come and have come since', () => {
    const missed = (missedSinceShare: number) =>
      recovery({
        kind: 'defrost-missed',
        shape: 'missed',
        end: onDay(9),
        features: { missed: 2, missedSinceShare },
      });
    expect(one(missed(0.03)).severity).toBe('note');
    expect(one(missed(0.5)).severity).toBe('watch');
  });

  it('takes a recovery that has always been long for a habit', () => {
    const measures = [{ name: 'recovery', value: 112, low: null, high: null, unit: 'min' }];
    const slow = one(recovery({ features: { recoveryRatio: 1.01 }, measures }));
    expect(slow.severity).toBe('note');
    expect(slow.summary).toContain('has since the export begins');
    expect(one(recovery({ features: { recoveryRatio: 2 }, measures })).severity).toBe('watch');
  });

  it('asks nobody for the termination probe of a timed off-cycle defrost', () => {
    const causes = one(recovery({ shape: 'extended' })).causes.map(({ cause }) => cause);
    expect(causes).toContain('defrost-schedule');
    expect(causes).not.toContain('defrost-termination');
  });

  it('tells a heater from a termination by how fast the air rises in longer defrosts', () => {
    const first = (features: Evidence['features']) =>
      directJudgement({ ...heated, lead: recovery({ shape: 'extended', features }) }, features).causes[0]!
        .cause;
    expect(first({ heatRateRatio: 0.6, heatRiseRatio: 1 })).toBe('defrost-heat');
    expect(first({ heatRateRatio: 1, heatRiseRatio: 1.4 })).toBe('defrost-termination');
    expect(first({})).toBe('defrost-termination');
  });

  it('blames the heater where the case grows warm after its defrosts grew longer, and not where it was warm before', () => {
    const lead = recovery({ shape: 'extended', onset: onDay(6) });
    const first = (rise: number, onset: number) => {
      const warm = wholeRise({ onset, features: { rise, compared: 1 } });
      return directJudgement({ ...heated, lead, evidence: [lead, warm] }, {}).causes[0]!.cause;
    };
    expect(first(9, onDay(8))).toBe('defrost-heat');
    expect(first(1, onDay(8))).toBe('defrost-termination');
    expect(first(3, onDay(4))).toBe('defrost-termination');
  });

  it('keeps troubles apart that are weeks apart', () => {
    const early = evidence({ probe: 'M01 air B', onset: onDay(1), end: onDay(3.5), features: { shift: 3 } });
    expect(findings(early, recovery({ onset: onDay(11) }))).toHaveLength(2);
  });

  it('takes two probes of different circuits that jump at one moment the opposite way for exchanged', () => {
    const up = evidence({ probe: 'M01 air A', features: { shift: 2 } });
    const down = evidence({
      circuit: 'M02',
      probe: 'M02 air A',
      features: { shift: -1.8 },
      onset: up.onset + 60_000,
    });
    const causes = findings(up, down).map((finding) => finding.causes[0]!.cause);
    expect(causes).toEqual(['probe-swapped', 'probe-swapped']);
    const later = findings(up, { ...down, onset: up.onset + 2 * 3_600_000 });
    expect(later.map((finding) => finding.causes[0]!.cause)).not.toContain('probe-swapped');
  });

  it('gives two probes that each went over to the circuit of the other one date, and each its partner', () => {
    const gone = (circuit: string, other: string, onset: number) =>
      evidence({
        circuit,
        probe: `${circuit} air A`,
        shape: 'swapped',
        onset,
        points: [`${circuit} air A`, `${other} air A`, `${other} air B`],
      });
    const found = findings(gone('M01', 'M02', onDay(5)), gone('M02', 'M01', onDay(5.5)));
    expect(found.map(({ onset }) => onset)).toEqual([onDay(5), onDay(5)]);
    const summaries = found.map(({ summary }) => summary).sort();
    expect(summaries[0]).toMatch(/^M01: .* swapped with M02 air A there\.$/);
    expect(summaries[1]).toMatch(/^M02: .* swapped with M01 air A there\.$/);
    const apart = findings(gone('M01', 'M02', onDay(5)), gone('M02', 'M01', onDay(8)));
    expect(new Set(apart.map(({ onset }) => onset)).size).toBe(2);
    const jumped = (probe: string, shift: number) =>
      findings(
        { ...gone('M01', 'M02', onDay(5)), features: { shift: 2 } },
        evidence({ circuit: 'M02', probe, features: { shift }, onset: onDay(5) + 600_000 }),
      ).map(({ causes }) => causes[0]!.cause);
    expect(jumped('M02 air A', -2)).toEqual(['probe-swapped', 'probe-swapped']);
    expect(jumped('M02 air A', 2)).not.toEqual(['probe-swapped', 'probe-swapped']);
    const third = findings(gone('M01', 'M02', onDay(5)), gone('M02', 'M03', onDay(5.5)));
    expect(new Set(third.map(({ onset }) => onset)).size).toBe(2);
  });
});

describe('severity', () => {
  const projection = (days: number | null) => ({
    limit: 5,
    at: days === null ? null : onDay(14 + days),
    earliest: null,
    latest: null,
    reason: null,
  });

  const changedSetPoint = (by: number) =>
    evidence({
      analysis: 'left-off',
      kind: 'left-off',
      shape: 'set-point-changed',
      measures: [
        { name: 'setPointBefore', value: 25 / 9, low: null, high: null, unit: 'Cel' },
        { name: 'setPointNow', value: 25 / 9 + by, low: null, high: null, unit: 'Cel' },
      ],
      features: { setPointChange: by, fromColumn: 0, dutyChange: -0.2 },
    });

  it.each([
    ['will reach its limit in 13 days', wholeRise({ projection: projection(13) }), 'act'],
    ['will reach it in 15', wholeRise({ projection: projection(15) }), 'watch'],
    ['has no date', wholeRise({ projection: projection(null) }), 'watch'],
    ['is less likely than not', wholeRise({ certainty: 0.3 }), 'note'],
    [
      'is over, and was small',
      evidence({ probe: 'M01 air A', onset: onDay(2), end: onDay(9), features: { shift: 1.1 } }),
      'note',
    ],
    [
      'is over, and was large',
      evidence({ probe: 'M01 air A', onset: onDay(2), end: onDay(9), features: { shift: 2 } }),
      'watch',
    ],
    [
      'was over within two days',
      evidence({ probe: 'M01 air A', end: onDay(6.9), features: { shift: 3 } }),
      'note',
    ],
    ['lasted longer', evidence({ probe: 'M01 air A', end: onDay(7.1), features: { shift: 3 } }), 'watch'],
    ['is a lie of 4.3 K', evidence({ probe: 'M01 air A', features: { shift: -4.3 } }), 'watch'],
    ['is a lie of 4.5 K', evidence({ probe: 'M01 air A', features: { shift: -4.5 } }), 'act'],
    ['is a single missed defrost', recovery({ kind: 'defrost-missed', shape: 'single' }), 'note'],
    [
      'concerns the record',
      evidence({ analysis: 'record-quality', kind: 'record-quality', shape: 'thin' }),
      'note',
    ],
    ['is a set point that somebody changed', changedSetPoint(2), 'note'],
    [
      'is a set point that somebody raised',
      wholeRise({
        shape: 'step',
        features: { rise: 1, compared: 1, dutyRise: -0.05, swingRatio: 1, dayNightRatio: 0 },
      }),
      'note',
    ],
  ])('of what %s', (_, seen, severity) => {
    expect(one(seen).severity).toBe(severity);
  });
});

describe('a finding', () => {
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
    expect(causes[0]!.because).toMatch(
      /colder than its neighbours.*; but it is the same by day and by night/,
    );
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
    for (const alike of ['set-point change', 'weather', 'stocking', 'old habit'])
      expect(text).toContain(alike);
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
    for (const { summary } of findings(
      creep,
      wholeRise({ circuit: 'M02' }),
      rackHigh({ onset: onDay(12) }),
    )) {
      expect(summary).not.toMatch(/product|safe|compliant|discard/i);
    }
  });
});

describe('the list', () => {
  it('puts the worst first and ranks every circuit once', () => {
    const now = { limit: 5, at: onDay(13), earliest: null, latest: null, reason: null };
    const { findings: listed, circuits } = judged(
      recovery({ circuit: 'M02' }),
      wholeRise({ circuit: 'M03', projection: now }),
    );
    expect(listed.map(({ severity }) => severity)).toEqual(['act', 'watch']);
    expect(circuits.map(({ id, rank, worst }) => [id, rank, worst])).toEqual([
      ['M03', 1, 'act'],
      ['M02', 2, 'watch'],
      ['M01', 3, null],
    ]);
  });

  it('does not depend on the order of the evidence', () => {
    const seen = [
      recovery({ circuit: 'M02' }),
      wholeRise({ circuit: 'M03' }),
      evidence({ probe: 'M01 air B' }),
    ];
    expect(findings(...seen).map(({ id }) => id)).toEqual(findings(...seen.reverse()).map(({ id }) => id));
  });
});

it('confidence grows with every independent view, and stays a probability', () => {
  const alone = one(wholeRise({ certainty: 0.6 })).confidence;
  const both = one(wholeRise({ certainty: 0.6 }), recovery({ certainty: 0.6, onset: onDay(5) })).confidence;
  expect(both).toBeGreaterThan(alone);
  expect(both).toBeLessThan(1);
});
