import { describe, expect, test } from 'vitest';
import { loggingKind } from '../../../src/importing/layout/logging-kind.ts';
import { columnProfile } from '../../../src/importing/values/column-profile.ts';
import { noise } from '../../support/simple-case.ts';

const scanMs = 120_000;
const scans = 4000;

interface Air {
  /** Scatter from scan to scan beside the swing of the valve, °F. */
  readonly scatter: number;
  readonly step?: number;
}

/** A case at 37 °F that swings ±2 °F in 20 minutes, read every 2 minutes, in °F. */
function airOf({ scatter, step = 0.1 }: Air): Float64Array {
  const random = noise(3);
  return Float64Array.from({ length: scans }, (_, scan) => {
    const value = 37 + 2 * Math.sin(scan / 1.6) + scatter * random();
    return Math.round(value / step) * step;
  });
}

function kindOf(values: Float64Array, isWritten: (scan: number) => boolean) {
  const rows = [...values.keys()].filter(isWritten);
  const times = Float64Array.from(rows, (scan) => scan * scanMs);
  const written = Float64Array.from(rows, (scan) => values[scan]!);
  return loggingKind(times, written, columnProfile(written), null);
}

/** Written when it has moved by the threshold since it was last written, or has rested for so many scans. */
function onChange(values: Float64Array, threshold: number, rest = Number.POSITIVE_INFINITY) {
  let before = Number.NEGATIVE_INFINITY;
  let writtenAt = 0;
  return (scan: number) => {
    const isNear = Math.abs(values[scan]! - before) < threshold - 1e-9;
    if (isNear && scan - writtenAt < rest) return false;
    before = values[scan]!;
    writtenAt = scan;
    return true;
  };
}

describe('a log on change', () => {
  test.each([
    [0.5, 0.1],
    [0.5, 0.5],
    [0.2, 0.3],
    [1, 0.6],
  ])('with a threshold of %f °F and a scatter of %f °F is known', (threshold, scatter) => {
    const air = airOf({ scatter });
    expect(kindOf(air, onChange(air, threshold))).toBe('change-of-value');
  });

  test('is known all the same where what rests is written every quarter of an hour', () => {
    const resting = airOf({ scatter: 0.1 }).map((value, scan) => (scan % 500 < 150 ? 36 : value));
    expect(kindOf(resting, onChange(resting, 0.5, 8))).toBe('change-of-value');
  });

  test('is known of a valve that is read in whole percent and moves at nearly every scan', () => {
    const opening = airOf({ scatter: 3, step: 1 });
    expect(kindOf(opening, onChange(opening, 1))).toBe('change-of-value');
  });
});

describe('a sampled log', () => {
  test.each([
    [0.1, 0.1],
    [0.5, 0.1],
    [2, 0.1],
    [6, 1],
    [0.3, 0.001],
  ])(
    'with a scatter of %f °F in steps of %f °F stays one, with a tenth of its rows lost',
    (scatter, step) => {
      const air = airOf({ scatter, step });
      const lost = noise(9);
      expect(kindOf(air, () => lost() < 1.28)).toBe('sampled');
    },
  );
});
