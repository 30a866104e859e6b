import { describe, expect, it } from 'vitest';
import { simulateLumped } from '../../sample-logs/maker/lumped-model/simulate.ts';
import { simulateSections } from '../../sample-logs/maker/section-model/simulate.ts';
import type { StoreRequest } from '../../sample-logs/maker/store-request.ts';
import { toLog } from '../../sample-logs/maker/to-log.ts';
import { diagnose } from '../../src/diagnosis/diagnose.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { evidence, findings, onDay, one, rackHigh, recovery, wholeRise } from './support.ts';

const short = rackHigh({ shape: 'short-of-liquid', features: { shareShort: 1, shareWarm: 0.4 } });

describe('a group that is short of liquid', () => {
  it('stands for what its circuits show, and the case-by-case reading is the second cause', () => {
    const duty = wholeRise({ circuit: 'M03', shape: 'duty', features: { dutyRise: 0.3 }, onset: onDay(7) });
    const late = recovery({ circuit: 'M02', shape: 'lengthening', onset: onDay(8) });
    const finding = one(short, wholeRise(), late, duty);
    expect(finding).toMatchObject({ origin: 'rack', severity: 'act', covers: ['M01', 'M02', 'M03'] });
    expect(finding.causes.map(({ cause }) => cause).slice(0, 2)).toEqual(['low-charge', 'underfeeding']);
    expect(finding.notThis.join(' ')).toContain('Not the capacity of the rack');
    expect(finding.wouldDecide).toContain('sight glass');
  });

  it('takes a circuit whose step its own analysis dates some days before, and no probe that stepped then', () => {
    const before = wholeRise({ shape: 'step', onset: onDay(2) });
    expect(one({ ...short, onset: onDay(6) }, before).covers).toEqual(['M01']);
    const probe = evidence({ probe: 'M01 air A', features: { shift: 2 }, onset: onDay(2) });
    expect(findings({ ...short, onset: onDay(6) }, probe)).toHaveLength(2);
  });

  it('takes a receiver that is nearly empty, and machines that trip on low pressure, for its signs', () => {
    const level = rackHigh({ shape: 'level-low', certainty: 0.6, features: { levelRatio: 0.1 } });
    const finding = one(short, level);
    expect(finding.causes[0]).toMatchObject({ cause: 'low-charge' });
    expect(finding.causes[0]!.likelihood).toBeGreaterThan(one(short).causes[0]!.likelihood);
    const trips = rackHigh({ shape: 'low-pressure-trips', certainty: 0.95 });
    expect(one(short, trips).causes[0]!.cause).toBe('low-charge');
    expect(findings(rackHigh({ onset: onDay(5) }), level)).toHaveLength(2);
  });

  it('does not hide a probe far from its own neighbours', () => {
    const far = evidence({ probe: 'M01 air A', features: { shift: 2.4 } });
    expect(findings(short, far).map(({ circuit }) => circuit)).toContain('M01');
  });
});

const logging = {
  temperature: 'degC',
  pressure: 'kPa',
  temperatureStep: 0.1,
  pressureStep: 1,
  intervalMinutes: 5,
} as const;

describe.each([
  ['section', simulateSections],
  ['lumped', simulateLumped],
] as const)('in a store of the %s model', (_, simulate) => {
  const told = (request: Partial<StoreRequest>, without: readonly string[] = []) => {
    const store = simulate({ seed: 71, days: 28, mediumCircuits: 6, lowCircuits: 3, ...request });
    const log = toLog(store, {
      logging,
      without: without as never,
      naming: (point) => `${point.circuit ?? point.group ?? ''} ${point.role} ${point.place}`,
    });
    return diagnose(computeSignals(log)).findings.filter(({ severity }) => severity !== 'note');
  };

  it.each(['full', 'mild'] as const)(
    'a low charge (%s) without a level is one finding of the rack',
    (strength) => {
      const faults = [{ fault: 'low-charge', on: 'S1', strength, onsetDay: 10 }] as const;
      const flags = told({ faults }, ['liquid-level', 'superheat', 'coil-out']);
      expect(flags.map(({ circuit, suctionGroup, origin }) => [circuit, suctionGroup, origin])).toEqual([
        [null, 'S1', 'rack'],
      ]);
      expect(flags[0]!.causes[0]!.cause).toBe('low-charge');
    },
  );

  it('two iced ends are two findings on their cases', () => {
    const faults = (['M01', 'M02'] as const).map(
      (on) => ({ fault: 'iced-end', on, size: 6, onsetDay: 10 }) as const,
    );
    const flags = told({ faults });
    expect(flags.map(({ circuit }) => circuit).sort()).toEqual(['M01', 'M02']);
  });

  it('a humid week and a warm spell are none', () => {
    expect(told({ lookAlikes: ['humid-week'], lookAlikeDay: 21 })).toEqual([]);
    expect(told({ lookAlikes: ['warm-spell'], lookAlikeDay: 22 })).toEqual([]);
  });
});
