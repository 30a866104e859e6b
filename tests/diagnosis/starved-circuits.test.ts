import { describe, expect, it } from 'vitest';
import { judge } from '../../src/diagnosis/judge.ts';
import type { Evidence } from '../../src/model/evidence.ts';
import type { Record } from '../../src/model/record.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { handMadeStore, still } from '../analyses/support/hand-made-store.ts';
import { recordOf } from '../support/hand-made-log.ts';
import { findings, onDay, one, rackHigh, recovery, wholeRise } from './support.ts';

describe('a receiver', () => {
  it('that is low is the cause where two of its circuits want for liquid since, and not where one does', () => {
    const low = rackHigh({ shape: 'level-low', onset: onDay(4), features: { levelRatio: 0.25 } });
    const later = (circuit: string, day: number) =>
      recovery({
        shape: 'lengthening',
        circuit,
        onset: onDay(day),
        features: { recoveryRise: 9, recoveryRatio: 2 },
      });
    expect(one(low, later('M01', 7), later('M03', 9)).covers).toEqual(['M01', 'M03']);
    expect(findings(low, later('M01', 7))).toHaveLength(2);
    expect(findings(low, later('M01', 7), later('M03', 1))).toHaveLength(3);
    // Somewhat warm within days is want of liquid, too; at once, or warm by far, it is something else.
    const step = (rise: number, sudden: number) =>
      wholeRise({ circuit: 'M03', shape: 'step', onset: onDay(7), features: { rise, sudden, compared: 1 } });
    expect(one(low, later('M01', 7), step(1.9, 0)).covers).toEqual(['M01', 'M03']);
    expect(findings(low, later('M01', 7), step(1.9, 1))).toHaveLength(3);
    expect(findings(low, later('M01', 7), step(2.6, 0))).toHaveLength(3);
  });

  it('that is low is the cause of what coils with little reserve show in the warm hours, also in a group without a receiver', () => {
    const ids = ['M01', 'M02', 'M03', 'M04', 'L01', 'L02'];
    const signals = computeSignals(
      handMadeStore({ days: 14, circuits: ids.map((id) => ({ id, probes: [still, still, still] })) }),
    );
    const [group] = signals.groups;
    const store = (liquidLevel: Record | null) => ({
      ...signals,
      groups: [
        { ...group!, members: ids.slice(0, 4) },
        { ...group!, group: { ...group!.group, id: 'S2', liquidLevel }, members: ids.slice(4) },
      ],
    });
    const low = rackHigh({ shape: 'level-low', onset: onDay(4), features: { levelRatio: 0.25 } });
    const warm = (circuit: string, shape: string) =>
      wholeRise({ circuit, shape, suctionGroup: circuit.startsWith('L') ? 'S2' : 'S1', onset: onDay(5) });
    const told = (level: Record | null, ...warmed: Evidence[]) =>
      judge(store(level), { evidence: [low, ...warmed], abstentions: [] }).findings;
    const [finding, ...others] = told(null, warm('M02', 'duty'), warm('L01', 'trading-hours'));
    expect(others).toEqual([]);
    expect(finding!.covers).toEqual(['M02', 'L01']);
    expect(finding!.summary).toContain('it shows in');
    expect(told(null, warm('L01', 'trading-hours'))).toHaveLength(2);
    const own = recordOf('S2 level', 'fraction', new Float64Array(signals.log.grid.count).fill(0.3));
    expect(told(own, warm('M02', 'duty'), warm('L01', 'trading-hours'))).toHaveLength(3);
  });
});
