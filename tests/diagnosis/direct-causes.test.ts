import { expect, it } from 'vitest';
import { directJudgement } from '../../src/diagnosis/direct-causes.ts';
import type { Trouble } from '../../src/diagnosis/trouble.ts';
import type { Evidence } from '../../src/model/evidence.ts';
import { onDay, one, recovery, wholeRise } from './support.ts';

const heated: Trouble = {
  scope: 'defrost',
  lead: recovery(),
  evidence: [],
  circuit: null,
  group: null,
  covers: [],
};

it('asks nobody for the termination probe of a timed off-cycle defrost', () => {
  const causes = one(recovery({ shape: 'extended' })).causes.map(({ cause }) => cause);
  expect(causes).toContain('defrost-schedule');
  expect(causes).not.toContain('defrost-termination');
});

const longer = ['extended', 'by-the-clock'];

it.each(longer)(
  'tells a heater from a termination by how fast the air rises in defrosts that are %s',
  (shape) => {
    const first = (features: Evidence['features']) =>
      directJudgement({ ...heated, lead: recovery({ shape, features }) }, features).causes[0]!.cause;
    expect(first({ heatRateRatio: 0.6, heatRiseRatio: 1 })).toBe('defrost-heat');
    expect(first({ heatRateRatio: 1, heatRiseRatio: 1.4 })).toBe('defrost-termination');
    expect(first({})).toBe('defrost-termination');
  },
);

it.each(longer)(
  'blames the heater where the case grows warm after its defrosts were %s, and not where it was before',
  (shape) => {
    const lead = recovery({ shape, onset: onDay(6) });
    const first = (rise: number, onset: number) => {
      const warm = wholeRise({ onset, features: { rise, compared: 1 } });
      return directJudgement({ ...heated, lead, evidence: [lead, warm] }, {}).causes[0]!.cause;
    };
    expect(first(9, onDay(8))).toBe('defrost-heat');
    expect(first(1, onDay(8))).toBe('defrost-termination');
    expect(first(3, onDay(4))).toBe('defrost-termination');
  },
);
