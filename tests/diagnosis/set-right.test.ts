import { describe, expect, test } from 'vitest';
import { evidence, one } from './support.ts';

/** What a lie looks like: the whole of it stays in a defrost, by night and in the swing. */
const lie = { defrostOffsetRatio: 0.98, dayNightRatio: 0, riseRatio: 1, swingRatio: 1, creeping: 0.02 };
const truth = {
  defrostOffsetRatio: 0.45,
  dayNightRatio: 0.4,
  riseRatio: 0.6,
  swingRatio: 0.6,
  creeping: 0.02,
};

const step = (offsetBefore: number, offsetNow: number, of: object = lie) =>
  one(
    evidence({
      probe: 'M01 air A',
      features: {
        ...of,
        warm: offsetNow > offsetBefore ? 1 : 0,
        shift: offsetNow - offsetBefore,
        offsetBefore,
        offsetNow,
      },
    }),
  );

describe('a probe that stood off its neighbours and from one moment on stands with them', () => {
  test('was set right: worth knowing, and said so', () => {
    const finding = step(-1.8, 0);
    expect(finding.severity).toBe('note');
    expect(finding.summary).toContain('below its neighbours and stands with them since');
    expect(finding.summary).toContain('replaced or set right');
  });

  test.each([
    ['lies as much the other way', -1.8, 1.8],
    ['lies half as much', -3.4, -1.6],
    ['stood with them before', 0.2, 2],
  ])('not one that now %s', (_, before, now) => {
    expect(step(before, now).severity).toBe('watch');
  });

  test.each([-1.1, 1.1])('also one that stood %d K off, little more than places of a case do', (before) => {
    expect(step(before, -before / 2).severity).toBe('note');
  });

  test('not a cold place that is truly warmer now', () => {
    const finding = step(-1.8, 0, truth);
    expect(finding.origin).toBe('case');
    expect(finding.severity).toBe('watch');
  });
});
