import { describe, expect, it } from 'vitest';
import { judge } from '../../src/diagnosis/judge.ts';
import type { Evidence } from '../../src/model/evidence.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { handMadeStore, still } from '../analyses/support/hand-made-store.ts';
import {
  evidence,
  findings,
  onDay,
  one,
  quietSignals,
  rackHigh,
  recovery,
  threeCircuits,
  wholeRise,
} from './support.ts';

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
    const signals = threeCircuits(20, () => ({
      together: (day) => 3 * Math.min(1, Math.max(0, (day - 8) / 3)),
    }));
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
    const signals = threeCircuits(14, (id) => ({ together: id === 'M02' ? oldRise : rackRise }));
    const dated = ['M01', 'M02'].map((circuit) => wholeRise({ circuit, onset: onDay(5), shape: 'step' }));
    const seen = { evidence: [rackHigh({ onset: onDay(8) }), ...dated], abstentions: [] };
    expect(judge(signals, seen).findings.map(({ circuit }) => circuit)).toEqual([null, 'M02']);
  });

  it('takes a rise that came while nothing was logged, just before the rack was seen to fail', () => {
    const rise = (since: number) => (day: number) =>
      day >= 8 && day < 10 ? Number.NaN : day < since ? 0 : 2.4;
    const told = (since: number) => {
      const signals = threeCircuits(16, (id) => ({ together: rise(id === 'M02' ? since : 10) }));
      const dated = wholeRise({ circuit: 'M02', onset: onDay(1), shape: 'creep' });
      const seen = { evidence: [rackHigh({ onset: onDay(11.3) }), dated], abstentions: [] };
      return judge(signals, seen).findings.map(({ circuit }) => circuit);
    };
    expect(told(10)).toEqual([null]);
    expect(told(5)).toContain('M02');
  });

  it('takes air that is warm in trading hours alone, when most of that came with it, and not when it was there before', () => {
    const told = (since: number) => {
      const signals = threeCircuits(16, () => ({
        together: (day) => (day >= since && day % 1 > 0.4 && day % 1 < 0.85 ? 2.5 : 0),
      }));
      const trading = wholeRise({ shape: 'trading-hours', onset: onDay(4.5), features: { rise: 2.5 } });
      const seen = { evidence: [rackHigh({ onset: onDay(8) }), trading], abstentions: [] };
      return judge(signals, seen).findings.map(({ circuit }) => circuit);
    };
    expect(told(7)).toEqual([null]);
    expect(told(4)).toContain('M01');
  });

  it('takes defrosts that reach their longest time with it, for a coil that is fed all the time has more to melt', () => {
    const byTheClock = recovery({ shape: 'by-the-clock', onset: onDay(6), features: { lengthRatio: 1 } });
    expect(one(rackHigh({ onset: onDay(5) }), byTheClock).covers).toEqual(['M01']);
    expect(findings(rackHigh({ onset: onDay(9) }), byTheClock)).toHaveLength(2);
    // Liquid leaves one coil after the other; a pressure is felt at once.
    const later = { ...byTheClock, onset: onDay(10) };
    expect(one(rackHigh({ shape: 'short-of-liquid', onset: onDay(5) }), later).covers).toEqual(['M01']);
    expect(findings(rackHigh({ onset: onDay(5) }), later)).toHaveLength(2);
  });

  it('takes off-cycle defrosts that warm less since its target stands elsewhere, for their frost is another', () => {
    const weak = (day: number) => recovery({ shape: 'weak-rise', onset: onDay(day) });
    const left = rackHigh({ shape: 'target-left', onset: onDay(8), features: { targetMoved: 2 } });
    expect(one(left, weak(8.5)).covers).toEqual(['M01']);
    expect(findings(left, weak(4))).toHaveLength(2);
    expect(findings(rackHigh({ onset: onDay(8) }), weak(8.5))).toHaveLength(2);
    const heated = quietSignals.circuits.map((circuit) => ({
      ...circuit,
      circuit: { ...circuit.circuit, defrost: { ...circuit.circuit.defrost, kind: 'electric' as const } },
    }));
    const seen = { evidence: [left, weak(8.5)], abstentions: [] };
    expect(judge({ ...quietSignals, circuits: heated }, seen).findings).toHaveLength(2);
  });

  it('whose float stopped leaves the case short that asks for most: somewhat warm, feeding all the time, or late', () => {
    const stopped = rackHigh({
      shape: 'float-stopped',
      onset: onDay(9),
      certainty: 0.8,
      features: { daysStill: 5, note: 0 },
    });
    const warm = (rise: number, onset: number) =>
      wholeRise({ shape: 'step', onset: onDay(onset), features: { rise, compared: 1 } });
    expect(one(stopped, warm(1.1, 8.8)).covers).toEqual(['M01']);
    expect(
      one(stopped, wholeRise({ shape: 'duty', onset: onDay(3), features: { dutyRise: 0.3 } })).covers,
    ).toEqual(['M01']);
    expect(findings(stopped, warm(2.5, 8.8))).toHaveLength(2);
    expect(findings(stopped, warm(1.1, 4))).toHaveLength(2);
    expect(findings(stopped, { ...warm(1.1, 4), shape: 'creep' })).toHaveLength(2);
    const late = (onset: number) => recovery({ shape: 'lengthening', onset: onDay(onset) });
    expect(one(stopped, late(9.2)).covers).toEqual(['M01']);
    expect(findings(stopped, late(4))).toHaveLength(2);
    const since = (from: number) =>
      quietSignals.circuits.map((circuit) => ({
        ...circuit,
        probes: circuit.probes.map((probe) => ({
          ...probe,
          recovery: probe.recovery.map((_, day) => (day < from ? 5 : 60)),
        })),
      }));
    const told = (from: number) =>
      judge({ ...quietSignals, circuits: since(from) }, { evidence: [stopped, late(4)], abstentions: [] });
    expect(told(10).findings).toHaveLength(1);
    expect(told(6).findings).toHaveLength(2);
    const atAnEnd = { ...stopped, features: { daysStill: 5, note: 1 } };
    expect(findings(atAnEnd, warm(1.1, 8.8))).toHaveLength(2);
  });

  it('takes superheat by the day from which on it is read against another pressure', () => {
    const starving = (day: number) =>
      evidence({
        kind: 'superheat',
        analysis: 'superheat',
        shape: 'starving',
        onset: onDay(day),
        features: { superheat: 12, superheatRise: 6 },
      });
    const left = rackHigh({ shape: 'target-left', onset: onDay(10.6), features: { targetMoved: -2 } });
    expect(findings(left, starving(8)).map(({ circuit }) => circuit)).toEqual([null]);
    expect(findings(left, starving(7))).toHaveLength(2);
  });

  it('takes a valve dated before it that feeds all it can since, as its peers do, in air no warmer than theirs', () => {
    /** A humid spell, then the rack. */
    const warmth = (day: number, since: number): number =>
      day < 12 ? 0 : day < 15 ? 0.8 : 0.8 + (since - 0.8) * Math.min(1, (day - 15) / 3);
    const store = (warmer: number, dutyOf: (day: number) => number, peersFeed = 1) => {
      const signals = threeCircuits(30, (id) => ({
        together: (day) => warmth(day, id === 'M01' ? 1.2 + warmer : 1.2),
      }));
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

  it('does not hide the one circuit that was warm at once and hours before it: that is what it cannot carry', () => {
    const told = (onset: number, sudden: number, others: number) => {
      const signals = threeCircuits(14, (id) => ({
        together: (day) => (id === 'M01' ? 5 : others) * Math.min(1, Math.max(0, (day - 8) / 3)),
      }));
      const door = wholeRise({
        onset: onDay(onset),
        shape: 'step',
        features: { rise: 5, compared: 1, sudden },
      });
      const seen = { evidence: [rackHigh({ onset: onDay(8.5) }), door], abstentions: [] };
      return judge(signals, seen).findings.map(({ circuit, covers }) => [String(circuit), covers] as const);
    };
    expect(Object.fromEntries(told(8.1, 1, 0))).toEqual({ null: [], M01: [] });
    const all = [['null', ['M01', 'M02', 'M03']]];
    expect(told(8.1, 1, 1)).toEqual(all);
    expect(told(8.1, 0, 0)).toEqual([['null', ['M01']]]);
    expect(told(8.45, 1, 0)).toEqual([['null', ['M01']]]);
  });

  describe('beside a circuit that is warmer than it can have made it', () => {
    /** M01 goes up by `own` from day `since` on, the others by `others` from day 8 on, their suction by `suction` K. */
    const told = (
      { own = 6, others = 2, suction = 2.5, since = 8 },
      rack: Partial<Evidence> = {},
      seen: Partial<Evidence> = {},
      ...more: Evidence[]
    ) => {
      const ramp = (rise: number, from: number) => (day: number) =>
        rise * Math.min(1, Math.max(0, (day - from) / 2.5));
      const signals = computeSignals(
        handMadeStore({
          days: 16,
          circuits: ['M01', 'M02', 'M03', 'M04'].map((id) => ({
            id,
            probes: [still, still, still],
            together: id === 'M01' ? ramp(own, since) : ramp(others, 8),
          })),
        }),
      );
      const groups = signals.groups.map((group) => ({
        ...group,
        suction: group.suction.map((_, day) => 400 * Math.exp(0.035 * (day < 8 ? 0 : suction))),
      }));
      const evidence = [
        rackHigh({ onset: onDay(8), ...rack }),
        wholeRise({ onset: onDay(since), ...seen }),
        wholeRise({ circuit: 'M02', onset: onDay(8), features: { rise: others, compared: 1 } }),
        ...more,
      ];
      return judge({ ...signals, groups }, { evidence, abstentions: [] }).findings;
    };
    const flagged = (...given: Parameters<typeof told>) => told(...given).map(({ circuit }) => circuit);

    it('keeps the flag of that circuit alone, and says what the rack explains', () => {
      const found = told({});
      expect(found.map(({ circuit }) => circuit).sort()).toEqual(['M01', null]);
      expect(found.find(({ circuit }) => circuit === null)!.covers).toEqual(['M02', 'M03', 'M04']);
      const own = found.find(({ circuit }) => circuit === 'M01')!;
      expect(own.notThis[0]).toBe(
        'Not its rack alone: what S1 does explains 4.5 °F, and this circuit stood 10.8 °F over its usual level.',
      );
    });

    it('keeps one that was warm some days before, though its start lies within what trends are known by', () => {
      expect(flagged({ since: 5 })).toContain('M01');
    });

    it('takes it where the suction is up as far, or the others are as warm, or a little is left', () => {
      expect(flagged({ suction: 6 })).toEqual([null]);
      expect(flagged({ others: 5 })).toEqual([null]);
      expect(flagged({ own: 4.5 })).toEqual([null]);
    });

    it('takes it where liquid runs short, which comes to the far coils first, and in one warm day', () => {
      expect(flagged({}, { shape: 'short-of-liquid' })).toEqual([null]);
      expect(flagged({}, {}, { onset: onDay(15.2) })).toEqual([null]);
    });

    it('takes air that no longer cycles for its own doing, and a circuit that stands far above that for off', () => {
      const off = (valveSeen: number, onset: number): Partial<Evidence> => ({
        analysis: 'left-off',
        kind: 'left-off',
        shape: 'off',
        onset: onDay(onset),
        features: { hours: 40, still: 1, valveSeen, defrostsMissed: 0 },
      });
      expect(flagged({ own: 3 }, {}, off(0, 13.5))).toEqual([null]);
      expect(flagged({ own: 3 }, {}, off(1, 13.5))).toContain('M01');
      expect(flagged({ own: 3 }, {}, off(0, 7))).toContain('M01');
      expect(flagged({ own: 12 }, {}, off(0, 13.5))).toContain('M01');
      // Neither where nothing is known of its air by then.
      expect(flagged({ own: Number.NaN }, {}, off(0, 13.5))).toContain('M01');
    });

    it('reckons from the first that was seen of a trouble, whatever leads it', () => {
      const off = wholeRise({
        analysis: 'left-off',
        kind: 'left-off',
        shape: 'off',
        onset: onDay(15.8),
        features: { hours: 4, still: 1, valveSeen: 0, defrostsMissed: 0 },
      });
      expect(flagged({}, {}, {}, off)).toContain('M01');
      expect(flagged({ own: 3 }, {}, {}, off)).toEqual([null]);
    });

    it('asks for twice the warmth of the warmest other where no pressure is logged', () => {
      expect(flagged({ own: 6, others: 2, suction: Number.NaN }, { shape: 'group-warm' })).toContain('M01');
      expect(flagged({ own: 6, others: 3.5, suction: Number.NaN }, { shape: 'group-warm' })).toEqual([null]);
    });
  });

  it('takes a recovery that had made less than a third of its way when the rack failed, and none that had made more', () => {
    const grown = (before: number, from = 3) => {
      const circuits = quietSignals.circuits.map((circuit) => ({
        ...circuit,
        probes: circuit.probes.map((probe) => ({
          ...probe,
          recovery: probe.recovery.map((_, day) => (day < from ? 3 : day < 8 ? before : 33)),
        })),
      }));
      const evidence = [
        rackHigh({ onset: onDay(8.5) }),
        recovery({ shape: 'lengthening', onset: onDay(0.5) }),
      ];
      return judge({ ...quietSignals, circuits }, { evidence, abstentions: [] }).findings;
    };
    expect(grown(12)).toHaveLength(1);
    expect(grown(16)).toHaveLength(2);
    // Two days of a coil that began without frost are not how it was at first.
    expect(grown(16, 2)).toHaveLength(1);
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
