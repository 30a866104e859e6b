import type { Calendar } from '../model/grid.ts';
import type { Celsius } from '../units/quantities.ts';

/** Room that the sliding minimum works in; one for all probes of a log. */
export interface SlidingRoom {
  readonly queue: Int32Array;
  readonly levels: Float64Array;
}

export function slidingRoom(samples: number): SlidingRoom {
  return { queue: new Int32Array(samples), levels: new Float64Array(samples) };
}

/**
 * For each local day the lowest limit that an alarm with this delay would not have tripped at: the highest level
 * that the input held for the delay without a break, the end of the stretch lying in the day. Missing readings are
 * passed over, a lock-out breaks the stretch (the delay is reset). NaN where no stretch was long enough. Linear: a
 * sliding minimum kept in a queue.
 *
 * @param delaySamples readings between the first and the last of a stretch
 */
export function sustainedLevels(
  input: Float64Array,
  locked: Uint8Array,
  delaySamples: number,
  calendar: Calendar,
  { queue, levels }: SlidingRoom = slidingRoom(input.length),
): Float64Array {
  const highest = new Float64Array(calendar.days.length).fill(Number.NaN);
  const length = delaySamples + 1;
  let head = 0;
  let tail = 0;
  let run = 0;
  calendar.days.forEach(({ from, to }, day) => {
    for (let i = from; i < to; i++) {
      if (locked[i] === 1) {
        run = 0;
        head = tail;
        continue;
      }
      const value: Celsius = input[i]!;
      if (Number.isNaN(value)) continue;
      levels[run] = value;
      while (tail > head && levels[queue[tail - 1]!]! >= value) tail--;
      queue[tail++] = run++;
      if (queue[head]! <= run - 1 - length) head++;
      if (run < length) continue;
      const held = levels[queue[head]!]!;
      if (!(held <= highest[day]!)) highest[day] = held;
    }
  });
  return highest;
}
