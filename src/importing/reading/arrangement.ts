import { inOrder, isOrderly, type Ordering, orderByTime, plausibleSpan } from '../time/put-in-order.ts';
import { onceEach, type RepeatedTimes, repeatedTimes, timesOnce } from './repeated-times.ts';

interface Found {
  readonly count: number;
  /** Position in the file of the first, -1 for none. */
  readonly first: number;
}

export interface ArrangementOutcome {
  /** Readings that the columns lost to implausible times and to repeats. */
  readonly dropped: number;
  readonly stepsBack: Found;
  readonly implausible: Found;
  readonly repeated: Found;
  readonly conflicting: Found;
  /** Moved out of an hour that never comes to a time that has a reading of its own. */
  readonly displaced: Found;
}

/**
 * How readings in the order of the file become readings in the order of time, each time once: sorted, without
 * the times that cannot be, without repeats. Made from the times alone and then used for every column.
 */
export class Arrangement {
  readonly times: Float64Array;
  private dropped = 0;
  private readonly ordering: Ordering | null;
  private readonly span: { readonly from: number; readonly to: number };
  private readonly length: number;
  private readonly repeats: RepeatedTimes | null;
  private readonly conflicts: Uint8Array;
  private readonly moved: ReadonlySet<number>;

  /** `moved`: positions in the file of readings whose time was put forward over an hour that never comes. */
  constructor(fileTimes: Float64Array, moved: ReadonlySet<number>) {
    this.moved = moved;
    this.length = fileTimes.length;
    if (isOrderly(fileTimes)) {
      this.ordering = null;
      this.span = { from: 0, to: fileTimes.length };
      this.repeats = null;
      this.times = fileTimes;
    } else {
      this.ordering = orderByTime(fileTimes, moved);
      const { order } = this.ordering;
      const ordered = order === null ? fileTimes : inOrder(fileTimes, order);
      this.span = plausibleSpan(ordered);
      const kept = ordered.subarray(this.span.from, this.span.to);
      this.repeats = repeatedTimes(kept);
      this.times = this.repeats === null ? kept : timesOnce(kept, this.repeats);
    }
    this.conflicts = new Uint8Array(this.repeats?.starts.length ?? 0);
  }

  private get whole(): boolean {
    return this.span.from === 0 && this.span.to === this.length;
  }

  /** The values that belong to `times`. */
  arrange(fileValues: Float64Array): Float64Array {
    let values = fileValues;
    const order = this.ordering?.order ?? null;
    if (order !== null) values = inOrder(values, order);
    if (!this.whole) {
      const cut = values.slice(this.span.from, this.span.to);
      this.dropped += readingsIn(values) - readingsIn(cut);
      values = cut;
    }
    if (this.repeats === null) return values;
    const once = onceEach(values, this.repeats, this.conflicts);
    this.dropped += once.dropped;
    return once.values;
  }

  /** What was put in order and left out, once all columns are arranged. Positions are those of the file. */
  outcome(): ArrangementOutcome {
    const { ordering, span, repeats, moved } = this;
    const fileIndex = (position: number): number => ordering?.order?.[position] ?? position;
    const repeated = { count: 0, first: -1 };
    const conflicting = { count: 0, first: -1 };
    const displaced = { count: 0, first: -1 };
    const note = (tally: { count: number; first: number }, count: number, index: number): void => {
      tally.count += count;
      if (count > 0 && (tally.first < 0 || index < tally.first)) tally.first = index;
    };
    for (let stretch = 0; stretch < this.conflicts.length; stretch++) {
      const end = repeats!.ends[stretch]!;
      const tally = this.conflicts[stretch] === 1 ? conflicting : repeated;
      const start = repeats!.starts[stretch]!;
      const surplus = end - start - 1;
      let yielding = 0;
      while (moved.size > 0 && yielding < surplus && moved.has(fileIndex(span.from + start + yielding)))
        yielding++;
      note(displaced, yielding, fileIndex(span.from + start));
      note(tally, surplus - yielding, fileIndex(span.from + end - 1));
    }
    return {
      dropped: this.dropped,
      stepsBack: { count: ordering?.stepsBack ?? 0, first: ordering?.firstStepBack ?? -1 },
      implausible: {
        count: this.length - (span.to - span.from),
        first: this.whole ? -1 : fileIndex(span.from === 0 ? span.to : 0),
      },
      repeated,
      conflicting,
      displaced,
    };
  }
}

export function readingsIn(values: Float64Array): number {
  let count = 0;
  for (let at = 0; at < values.length; at++) if (!Number.isNaN(values[at]!)) count++;
  return count;
}
