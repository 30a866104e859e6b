import type { Spell, Spells } from './types.ts';

export const noSpells: Spells = columnsOf([], [], [], []);

/**
 * The stretches of one state in `values`, on where a value is above `threshold`. Nothing is counted across a
 * missing sample: a spell that begins or ends at one, or at an end of the log, is not `whole`.
 */
export function spellsOf(values: Float64Array, threshold = 0.5): Spells {
  const starts: number[] = [];
  const ends: number[] = [];
  const states: number[] = [];
  const wholes: number[] = [];
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
    starts.push(from);
    ends.push(to);
    states.push(Number(on));
    wholes.push(Number(opened && closed));
    from = to;
  }
  return columnsOf(starts, ends, states, wholes);
}

function columnsOf(
  from: readonly number[],
  to: readonly number[],
  on: readonly number[],
  whole: readonly number[],
): Spells {
  return {
    count: from.length,
    from: Int32Array.from(from),
    to: Int32Array.from(to),
    on: Uint8Array.from(on),
    whole: Uint8Array.from(whole),
  };
}

function endOfSpell(values: Float64Array, at: number, threshold: number, on: boolean): number {
  // A missing sample is neither above the threshold nor not above it.
  if (on) while (at < values.length && values[at]! > threshold) at++;
  else while (at < values.length && values[at]! <= threshold) at++;
  return at;
}

export function spellAt({ from, to, on, whole }: Spells, k: number): Spell {
  return { from: from[k]!, to: to[k]!, on: on[k] === 1, whole: whole[k] === 1 };
}

/** Whether spell `k` begins with a change from standing to running that the record shows: none is counted across a gap. */
export function isStart({ from, to, on }: Spells, k: number): boolean {
  return on[k] === 1 && k > 0 && to[k - 1] === from[k];
}
