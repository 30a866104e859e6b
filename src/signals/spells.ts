import type { Spell } from './types.ts';

/**
 * The stretches of one state in `values`, on where a value is above `threshold`. Nothing is counted across a
 * missing sample: a spell that begins or ends at one, or at an end of the log, is not `whole`.
 */
export function spellsOf(values: Float64Array, threshold = 0.5): Spell[] {
  const spells: Spell[] = [];
  const count = values.length;
  let from = 0;
  while (from < count) {
    const first = values[from]!;
    if (Number.isNaN(first)) {
      from++;
      continue;
    }
    const on = first > threshold;
    const to = endOfSpell(values, from + 1, threshold, on);
    const opened = from > 0 && !Number.isNaN(values[from - 1]!);
    const closed = to < count && !Number.isNaN(values[to]!);
    spells.push({ from, to, on, whole: opened && closed });
    from = to;
  }
  return spells;
}

function endOfSpell(values: Float64Array, at: number, threshold: number, on: boolean): number {
  // A missing sample is neither above the threshold nor not above it.
  if (on) while (at < values.length && values[at]! > threshold) at++;
  else while (at < values.length && values[at]! <= threshold) at++;
  return at;
}
