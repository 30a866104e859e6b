import { describe, expect, it } from 'vitest';
import { findingId, fnv1a } from '../../src/diagnosis/identity.ts';

describe('fnv1a', () => {
  // Published test vectors of 32-bit FNV-1a (draft-eastlake-fnv, appendix C).
  it.each([
    ['', '811c9dc5'],
    ['a', 'e40c292c'],
    ['b', 'e70c2de5'],
    ['foobar', 'bf9cf968'],
  ])('hashes %j to %s', (text, hash) => {
    expect(fnv1a(text)).toBe(hash);
  });
});

describe('findingId', () => {
  const parts = {
    site: 'Thistle Lane Grocer',
    kind: 'upward-drift',
    suctionGroup: 'S1',
    circuit: 'M01',
    probe: 'M01 air A',
    points: ['M01 air A'],
    shape: 'creep',
    onset: Date.UTC(2026, 8, 11, 4),
  };

  it('is the same for the same trouble, whatever the hour of its onset', () => {
    expect(findingId({ ...parts, onset: parts.onset + 3_600_000 })).toBe(findingId(parts));
  });

  it.each(['site', 'kind', 'circuit', 'probe', 'shape'] as const)('differs with the %s', (name) => {
    expect(findingId({ ...parts, [name]: 'another' })).not.toBe(findingId(parts));
  });

  it('tells apart findings without a probe by their points', () => {
    const none = { ...parts, probe: null };
    expect(findingId({ ...none, points: ['x'] })).not.toBe(findingId({ ...none, points: ['y'] }));
  });
});
