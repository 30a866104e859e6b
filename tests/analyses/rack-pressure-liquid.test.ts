import { describe, expect, test } from 'vitest';
import type { Circuit, SuctionGroup } from '../../src/model/log.ts';
import { dayOfOnset, measureOf } from '../support/analyse-case.ts';
import { recordOf, valuesOf } from '../support/hand-made-log.ts';
import { simpleCase } from '../support/simple-case.ts';
import { day, grid, judge, pressureOf, psig } from './support/rack-case.ts';

/** From 0 on day 7 to 1 on day 12. */
const growing = (minute: number) => Math.min(1, Math.max(0, (day(minute) - 7) / 5));
const starving = (minute: number) => 0.35 - 0.21 * growing(minute);

interface Wishes {
  readonly cooling?: (minute: number, circuit: number) => number;
  readonly load?: (minute: number, circuit: number) => number;
  readonly columns?: { valve?: boolean; status?: boolean; setPoint?: boolean };
}

const five = ({ cooling, load, columns }: Wishes): Circuit[] =>
  [0, 1, 2, 3, 4].map((i) =>
    simpleCase(grid, {
      id: `M0${i + 1}`,
      seed: i + 1,
      probes: 2,
      suctionGroup: 'S1',
      cooling: (minute) => cooling?.(minute, i) ?? 0.35,
      load: (minute) => load?.(minute, i) ?? 0.008,
      ...(columns === undefined ? {} : { columns }),
    }),
  );

/** Two machines that run for `share` of the time. */
const machines = (share: (minute: number) => number) =>
  [0, 1].map((i) =>
    recordOf(
      `comp ${i + 1}`,
      'status',
      valuesOf(grid, (minute) => ((minute / 5 + 7 * i) % 20 < 20 * share(minute) ? 1 : 0)),
    ),
  );

const seen = (wishes: Wishes, group: Partial<SuctionGroup> = {}) =>
  judge(
    {
      pressure: pressureOf(() => 45),
      pressureSetPoint: psig(45),
      compressors: machines(() => 0.6),
      ...group,
    },
    five(wishes),
  ).evidence;
const shapes = (wishes: Wishes, group: Partial<SuctionGroup> = {}) =>
  seen(wishes, group).map(({ shape }) => shape);

// That little charge starves all coils of a rack while its suction holds: common practice, no source.
describe('circuits that call for ever more while the suction pressure holds', () => {
  test('are short of liquid: one thing of the group, with its share, since they began', () => {
    const [short, ...others] = seen({ cooling: starving });
    expect(others).toEqual([]);
    expect(short).toMatchObject({ shape: 'short-of-liquid', circuit: null, suctionGroup: 'S1', end: null });
    expect(Math.abs(dayOfOnset(short!) - 7)).toBeLessThan(2);
    expect(short!.features.shareShort).toBe(1);
    expect(measureOf(short!, 'feedRise')).toBeGreaterThan(30);
    expect(short!.certainty).toBeGreaterThan(0.85);
  });

  test('are so where no machine is logged, and where no valve is', () => {
    expect(shapes({ cooling: starving }, { compressors: [] })).toEqual(['short-of-liquid']);
    expect(shapes({ cooling: starving, columns: { status: true, setPoint: true } })).toEqual([
      'short-of-liquid',
    ]);
  });

  test('are under a heavier load where the machines run more, as in a humid week', () => {
    const load = (minute: number) => 0.008 * (1 + 1.4 * growing(minute));
    const busy = machines((minute) => 0.6 + 0.3 * growing(minute));
    expect(shapes({ load }, { compressors: busy })).toEqual([]);
  });

  test('and are back after a week were stocked, or the weather passed', () => {
    const load = (minute: number) => (day(minute) > 6 && day(minute) < 12 ? 0.017 : 0.008);
    expect(shapes({ load })).toEqual([]);
  });

  test('for some hours of every day are trade', () => {
    const load = (minute: number) =>
      day(minute) > 7 && minute % 1440 > 600 && minute % 1440 < 780 ? 0.016 : 0.008;
    expect(shapes({ load })).toEqual([]);
  });

  test('and are two of five have troubles of their own', () => {
    expect(shapes({ cooling: (minute, i) => (i < 2 ? starving(minute) : 0.35) })).toEqual([]);
  });

  test('and whose suction is higher, by itself or with its target, lack capacity or were told to', () => {
    const gauge = (minute: number) => 45 + 7 * growing(minute);
    expect(shapes({ cooling: starving }, { pressure: pressureOf(gauge) })).not.toContain('short-of-liquid');
    const target = recordOf(
      'S1 target',
      'pressure',
      valuesOf(grid, (minute) => psig(gauge(minute))),
    );
    expect(
      shapes({ cooling: starving }, { pressure: pressureOf(gauge), pressureSetPoint: target }),
    ).not.toContain('short-of-liquid');
  });

  test('are short of liquid under a target that floats as high as it did before', () => {
    const gauge = (minute: number) => 45 + 2 * Math.sin((2 * Math.PI * (minute + 1440)) / (7 * 1440));
    const target = recordOf(
      'S1 target',
      'pressure',
      valuesOf(grid, (minute) => psig(gauge(minute))),
    );
    const floating = { pressure: pressureOf(gauge), pressureSetPoint: target };
    expect(shapes({ cooling: starving }, floating)).toContain('short-of-liquid');
  });

  test('are told with gaps in what the machines did', () => {
    const gap = (minute: number) => day(minute) > 3 && day(minute) < 5;
    const compressors = machines(() => 0.6).map((record) => ({
      ...record,
      values: record.values.map((value, i) => (gap(5 * i) ? Number.NaN : value)),
    }));
    expect(shapes({ cooling: starving }, { compressors })).toEqual(['short-of-liquid']);
  });
});
