import { z } from 'zod';
import type { Grid } from '../../src/model/grid.ts';
import { indexAt, timeAt } from '../../src/model/grid.ts';
import { Problem } from '../problem.ts';

const time = z.iso.datetime({ offset: true }).optional();

/** `?from&to&pixels`: RFC 3339 times, by default the whole span, and the columns that the plot has. */
export const rangeQuery = z.strictObject({
  from: time,
  to: time,
  pixels: z
    .string()
    .regex(/^\d{1,4}$/)
    .transform(Number)
    .pipe(z.int().min(20).max(4000))
    .optional(),
});

export interface PlotRange {
  readonly fromMs: number;
  readonly toMs: number;
  readonly pixels: number;
}

/** Held inside the span of the log. Throws `bad-query` when it ends before it starts. */
export function rangeOf({ from, to, pixels = 800 }: z.infer<typeof rangeQuery>, grid: Grid): PlotRange {
  const first = grid.startMs;
  const last = timeAt(grid, grid.count - 1);
  const fromMs = from === undefined ? first : Date.parse(from);
  const toMs = to === undefined ? last : Date.parse(to);
  if (toMs < fromMs)
    throw new Problem('bad-query', { detail: 'The query parameter "to" lies before "from".' });
  const hold = (instant: number): number => timeAt(grid, indexAt(grid, instant));
  return { fromMs: hold(fromMs), toMs: hold(toMs), pixels };
}
