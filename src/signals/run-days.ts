import type { Calendar, Grid } from '../model/grid.ts';
import { dayAt, stepMinutes } from '../model/grid.ts';
import type { Minutes } from '../units/quantities.ts';
import { isStart, spellAt } from './spells.ts';
import type { Spells } from './types.ts';

/** What one machine did on one local day. */
export interface RunDay {
  /** Changes from standing to running; none is counted across a gap. */
  readonly starts: number;
  readonly runHours: number;
  /** Shortest whole run and stop that began on the day; NaN when there was none. */
  readonly shortestRunMinutes: Minutes;
  readonly shortestOffMinutes: Minutes;
  /** Share of the day that is logged, 0 to 1. */
  readonly coverage: number;
}

/** The days of one machine, one entry a day of the calendar. */
export function runDays(spells: Spells, grid: Grid, calendar: Calendar): RunDay[] {
  const step = stepMinutes(grid);
  const days = calendar.days.map(() => ({ starts: 0, run: 0, known: 0, shortest: [Infinity, Infinity] }));
  for (let k = 0; k < spells.count; k++) {
    const spell = spellAt(spells, k);
    const began = days[dayAt(calendar, spell.from)]!;
    if (isStart(spells, k)) began.starts++;
    const side = spell.on ? 0 : 1;
    if (spell.whole) began.shortest[side] = Math.min(began.shortest[side]!, (spell.to - spell.from) * step);
    for (let d = dayAt(calendar, spell.from); d <= dayAt(calendar, spell.to - 1); d++) {
      const { from, to } = calendar.days[d]!;
      const samples = Math.min(spell.to, to) - Math.max(spell.from, from);
      days[d]!.known += samples;
      if (spell.on) days[d]!.run += samples;
    }
  }
  return days.map(({ starts, run, known, shortest: [on, off] }, d) => ({
    starts,
    runHours: (run * step) / 60,
    shortestRunMinutes: Number.isFinite(on) ? on! : Number.NaN,
    shortestOffMinutes: Number.isFinite(off) ? off! : Number.NaN,
    coverage: (known * step) / (calendar.days[d]!.hours * 60),
  }));
}
