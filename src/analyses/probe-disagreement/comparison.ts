import type { Calendar } from '../../model/grid.ts';

/** Half open: samples, or positions in `calendar.days`. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** The samples before a change began and those since it was there. `old` is empty for a habit since day one. */
export interface Comparison {
  readonly old: Span;
  readonly now: Span;
}

/** The same by days of the calendar. */
export function comparisonOfDays({ days }: Calendar, old: Span, now: Span): Comparison {
  const samples = ({ from, to }: Span): Span =>
    from < to ? { from: days[from]!.from, to: days[to - 1]!.to } : { from: 0, to: 0 };
  return { old: samples(old), now: samples(now) };
}

/** The days that lie wholly in a span of samples: those that their daily figures speak of. */
export function wholeDays({ days }: Calendar, { from, to }: Span): Span {
  const first = days.findIndex((day) => day.from >= from && day.to <= to);
  const last = days.findLastIndex((day) => day.from >= from && day.to <= to);
  return first < 0 ? { from: 0, to: 0 } : { from: first, to: last + 1 };
}
