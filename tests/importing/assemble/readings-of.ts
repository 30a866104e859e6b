import type { ExportUnit, ReadingColumn, Readings } from '../../../src/importing/readings.ts';

export const minuteMs = 60_000;

export interface ColumnSpec {
  readonly point: string;
  readonly values: readonly number[] | Float64Array;
  readonly unit?: ExportUnit;
  readonly status?: boolean;
  readonly fileStem?: string;
  /** Own times; else the shared ones of its file. */
  readonly times?: readonly number[];
  readonly logging?: 'sampled' | 'change-of-value';
}

/** Readings as the importer would hand them over; columns of one file share their times. */
export function readingsOf(
  specs: readonly ColumnSpec[],
  { start = Date.UTC(2026, 8, 1, 6), stepMs = minuteMs, timeZone = 'America/Denver' } = {},
): Readings {
  const shared = new Map<string, Float64Array>();
  const columns = specs.map((spec, order): ReadingColumn => {
    const fileStem = spec.fileStem ?? 'export';
    const key = `${fileStem}/${spec.values.length}`;
    if (spec.times === undefined && !shared.has(key)) {
      shared.set(
        key,
        Float64Array.from(spec.values, (_, index) => start + index * stepMs),
      );
    }
    return {
      point: spec.point,
      fileStem,
      order,
      unit: spec.unit ?? null,
      unitSource: spec.unit === undefined ? null : 'header',
      times: spec.times === undefined ? shared.get(key)! : Float64Array.from(spec.times),
      values: Float64Array.from(spec.values),
      status: spec.status ?? false,
      logging: spec.logging ?? 'sampled',
    };
  });
  return {
    columns,
    timeZone,
    report: { timeZone, timeZoneSource: 'site', files: [], issues: [] },
  };
}
