import { describe, expect, it } from 'vitest';
import type { Evidence } from '../../src/model/evidence.ts';
import { findings, onDay, one, rackHigh, wholeRise } from './support.ts';

describe('a rack that is high in warm hours and back every night', () => {
  const spell = (features: Evidence['features'], given: Partial<Evidence> = {}) =>
    rackHigh({ features: { backEveryNight: 1, limitReached: 0, shareWarm: 1, ...features }, ...given });

  it.each<[string, Evidence, string, string]>([
    ['in weather that explains it', spell({ weatherExplains: 1 }), 'note', 'weather'],
    ['as it was before, and healed', spell({ spellBefore: 1 }), 'note', 'weather'],
    ['and is over', spell({ weatherExplains: 0 }, { end: onDay(12) }), 'note', 'weather'],
    ['and nothing tells why', spell({}), 'watch', 'capacity-shortfall'],
    [
      'in weather that it bore before',
      spell({ weatherExplains: 0, spellBefore: 1 }),
      'act',
      'capacity-shortfall',
    ],
    [
      'while air is at its limit',
      spell({ weatherExplains: 1, limitReached: 1 }),
      'act',
      'capacity-shortfall',
    ],
    [
      'with a machine that no longer runs',
      spell({ spellBefore: 1, deadCompressors: 1 }),
      'act',
      'capacity-shortfall',
    ],
    [
      'but not in fact every night',
      spell({ weatherExplains: 1, backEveryNight: 0 }),
      'act',
      'capacity-shortfall',
    ],
  ])('%s', (_, seen, severity, cause) => {
    const finding = one(seen);
    expect(finding).toMatchObject({ severity, origin: 'rack' });
    expect(finding.causes[0]!.cause).toBe(cause);
    expect(finding.summary.includes('back every night')).toBe(severity !== 'act');
  });

  it('hides nothing of its circuits: what lasts there is no weather', () => {
    const rise = wholeRise({ circuit: 'M02' });
    expect(findings(spell({ weatherExplains: 1 }), rise)).toHaveLength(2);
    expect(findings(spell({}), rise)).toHaveLength(1);
  });
});
