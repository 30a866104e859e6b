/** Stretches [starts[i], ends[i]) of ascending times that are equal. */
export interface RepeatedTimes {
  readonly starts: readonly number[];
  readonly ends: readonly number[];
  /** Length without the repeats. */
  readonly count: number;
}

export function repeatedTimes(times: Float64Array): RepeatedTimes | null {
  const starts: number[] = [];
  const ends: number[] = [];
  let repeats = 0;
  for (let at = 1; at < times.length; at++) {
    if (times[at] !== times[at - 1]) continue;
    const start = at - 1;
    while (at < times.length && times[at] === times[start]) at++;
    starts.push(start);
    ends.push(at);
    repeats += at - start - 1;
  }
  return repeats === 0 ? null : { starts, ends, count: times.length - repeats };
}

export interface OnceOnly {
  readonly values: Float64Array;
  /** Readings left out because another one has the same time. */
  readonly dropped: number;
}

/** One value a time: the last that is one. Marks in `conflicts` the stretches whose values differ. */
export function onceEach(values: Float64Array, repeats: RepeatedTimes, conflicts: Uint8Array): OnceOnly {
  const kept = new Float64Array(repeats.count);
  let to = 0;
  let from = 0;
  let dropped = 0;
  for (let stretch = 0; stretch < repeats.starts.length; stretch++) {
    const start = repeats.starts[stretch]!;
    const end = repeats.ends[stretch]!;
    kept.set(values.subarray(from, start), to);
    to += start - from;
    let value = Number.NaN;
    for (let at = start; at < end; at++) {
      const next = values[at]!;
      if (Number.isNaN(next)) continue;
      if (!Number.isNaN(value)) {
        dropped++;
        if (value !== next) conflicts[stretch] = 1;
      }
      value = next;
    }
    kept[to++] = value;
    from = end;
  }
  kept.set(values.subarray(from), to);
  return { values: kept, dropped };
}

export function timesOnce(times: Float64Array, repeats: RepeatedTimes): Float64Array {
  const kept = new Float64Array(repeats.count);
  let to = 0;
  for (let at = 0; at < times.length; at++)
    if (at === 0 || times[at] !== times[at - 1]) kept[to++] = times[at]!;
  return kept;
}
