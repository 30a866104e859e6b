import { expect, it } from 'vitest';
import type { Evidence } from '../../src/model/evidence.ts';
import { evidence, findings, onDay, one, recovery, wholeRise } from './support.ts';

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
  expect(findings(wholeRise({ features: { rise: 1, compared: 1 } }), iced).map(({ probe }) => probe)).toEqual(
    ['M01 air A'],
  );
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

it('takes defrosts that end sooner for the consequence of air that grew far too warm at once: their coils begin warm', () => {
  const sooner = recovery({
    shape: 'ended-early',
    onset: onDay(5.3),
    certainty: 0.95,
    features: { lengthRatio: 0.4 },
  });
  const rise = (kelvin: number, onset: number) =>
    wholeRise({ onset, features: { rise: kelvin, compared: 1 } });
  expect(one(sooner, rise(3.1, onDay(5)))).toMatchObject({ kind: 'upward-drift', origin: 'case' });
  expect(one(sooner, rise(1.2, onDay(5)))).toMatchObject({ kind: 'defrost-recovery', origin: 'defrost' });
  expect(one(sooner, rise(3.1, onDay(8)))).toMatchObject({ kind: 'defrost-recovery', origin: 'defrost' });
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

it('keeps troubles apart that are weeks apart', () => {
  const early = evidence({ probe: 'M01 air B', onset: onDay(1), end: onDay(3.5), features: { shift: 3 } });
  expect(findings(early, recovery({ onset: onDay(11) }))).toHaveLength(2);
});
