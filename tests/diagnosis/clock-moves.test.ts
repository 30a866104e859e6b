import { describe, expect, it } from 'vitest';
import { judge } from '../../src/diagnosis/judge.ts';
import type { Evidence } from '../../src/model/evidence.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { handMadeStore, still } from '../analyses/support/hand-made-store.ts';
import { findings, onDay, one, recovery } from './support.ts';

describe('defrosts that moved', () => {
  const moved = (circuit: string, shiftMinutes: number, given: Partial<Evidence> = {}) =>
    recovery({
      circuit,
      kind: 'defrost-missed',
      shape: 'moved',
      features: { shiftMinutes, spacingMinutes: 360, hoursUntilSeen: 4 },
      measures: [{ name: 'defrostsMovedBy', value: shiftMinutes, low: null, high: null, unit: 'min' }],
      ...given,
    });

  it('on all circuits of a group alike are the clock of its control: one finding, between the last old and first new one', () => {
    const lost = recovery({ circuit: 'M02', kind: 'defrost-missed', shape: 'missed', onset: onDay(5.2) });
    const finding = one(
      moved('M01', 150),
      moved('M02', -210, { onset: onDay(5.05) }),
      moved('M03', 150, { onset: onDay(5.1) }),
      lost,
    );
    expect(finding).toMatchObject({
      kind: 'defrost-missed',
      origin: 'control',
      severity: 'watch',
      circuit: null,
      suctionGroup: 'S1',
      covers: ['M01', 'M02', 'M03'],
    });
    expect(finding.onset).toBeGreaterThan(onDay(5.1));
    expect(finding.onset).toBeLessThan(onDay(5 + 4 / 24));
    expect(finding.summary).toContain('2 h 30 min later');
    expect(finding.causes[0]).toMatchObject({ cause: 'defrost-schedule' });
  });

  it('are a remark where another group moved alike, or where the clocks of the place changed', () => {
    const group = [moved('M01', 150), moved('M02', 150), moved('M03', 150)];
    const alike = findings(...group, moved('L01', 150, { suctionGroup: 'S2' }));
    expect(alike.map(({ severity }) => severity)).toEqual(['note', 'note']);
    for (const { summary } of alike)
      expect(summary).toMatch(/other groups .* if nobody edited the schedules/);
    const other = findings(...group, moved('L01', 60, { suctionGroup: 'S2' }));
    expect(other.map(({ severity }) => severity)).toEqual(['watch', 'note']);
    const features = { shiftMinutes: 60, spacingMinutes: 360, hoursUntilSeen: 4, clocksChanged: 1 };
    const changeover = one(...['M01', 'M02', 'M03'].map((id) => moved(id, 60, { features })));
    expect(changeover.severity).toBe('note');
    expect(changeover.summary).toMatch(
      /clocks are changed about then, and its control probably did not go along/,
    );
  });

  it('of the whole store are watched once they fall in the trading day, which they had spared', () => {
    const store = (tradingBefore: number, tradingNow: number) => {
      const features = { shiftMinutes: 600, hoursUntilSeen: 4, tradingBefore, tradingNow };
      return findings(
        ...['M01', 'M02', 'M03'].map((id) => moved(id, 600, { features })),
        moved('L01', 600, { suctionGroup: 'S2', features }),
      );
    };
    expect(store(0, 1).map(({ severity }) => severity)).toEqual(['watch', 'watch']);
    expect(store(0, 1)[0]!.summary).toContain('between 10 and 20 o’clock');
    expect(store(1, 2).map(({ severity }) => severity)).toEqual(['note', 'note']);
    expect(store(0, 0).map(({ severity }) => severity)).toEqual(['note', 'note']);
  });

  it('on half of a group, whose other half defrosts when it always did, are an edit; by their spacing they may be the clock', () => {
    const ids = ['M01', 'M02', 'M03', 'M04', 'M05', 'M06'];
    const signals = computeSignals(
      handMadeStore({ days: 14, circuits: ids.map((id) => ({ id, probes: [still, still, still] })) }),
    );
    const said = (shift: number) =>
      judge(signals, { evidence: ids.slice(0, 3).map((id) => moved(id, shift)), abstentions: [] }).findings;
    expect(said(90)).toMatchObject([{ severity: 'note', circuit: null, covers: ids.slice(0, 3) }]);
    expect(said(90)[0]!.summary).not.toContain('the clock of the control');
    expect(said(360)).toMatchObject([{ severity: 'watch', circuit: null }]);
  });

  it('on one circuit, or by different amounts, are edits: one remark for the group', () => {
    expect(one(moved('M02', 150))).toMatchObject({ severity: 'note', circuit: 'M02', covers: [] });
    const edits = one(moved('M01', 150), moved('M02', 90), moved('M03', -100));
    expect(edits).toMatchObject({ severity: 'note', circuit: null, covers: ['M01', 'M02', 'M03'] });
    expect(edits.summary).toMatch(
      /M01 \(2 h 30 min later.*M02 \(90 minutes later.*M03 \(100 minutes earlier/,
    );
    expect(edits.summary).not.toContain('clock');
  });

  it('on two circuits alike are one remark, on two at other times two', () => {
    const alike = one(moved('M01', 150), moved('M02', 140, { onset: onDay(5.2) }));
    expect(alike.summary).toContain('M01, M02 have come 2 h 25 min later in the day');
    expect(findings(moved('M01', 150), moved('M02', 150, { onset: onDay(9) }))).toHaveLength(2);
  });
});
