import type { ReadingColumn } from '../readings.ts';
import type { Point } from './point.ts';

export interface JoinedColumns {
  readonly point: Point;
  /** Readings for one time that differed between files. */
  readonly conflicts: number;
}

/** One point from the columns that hold it, in time order; where two files differ, the later column wins. */
export function joinColumns(
  columns: readonly ReadingColumn[],
  name: string,
  header: string,
  joinedTimes: JoinedTimes,
): JoinedColumns {
  const first = columns[0]!;
  const common = {
    name,
    header,
    fileStems: [...new Set(columns.map((column) => column.fileStem))],
    order: first.order,
    unit: columns.find((column) => column.unit !== null)?.unit ?? null,
    status: columns.some((column) => column.status),
    logging: columns.reduce((most, column) => (column.times.length > most.times.length ? column : most))
      .logging,
  };
  const ended = joinedEnds(columns);
  if (columns.length === 1) {
    return { point: { ...common, ...ended, times: first.times, values: first.values }, conflicts: 0 };
  }
  const filled = columns.filter((column) => column.times.length > 0);
  const inOrder = [...filled].sort((a, b) => a.times[0]! - b.times[0]!);
  const apart = inOrder.every(
    (column, index) => index === 0 || inOrder[index - 1]!.times.at(-1)! < column.times[0]!,
  );
  if (apart) {
    const times = joinedTimes.of(inOrder.map((column) => column.times));
    const values = concatenated(inOrder.map((column) => column.values));
    return { point: { ...common, ...ended, times, values }, conflicts: 0 };
  }
  const merged = mergedByTime(filled);
  return {
    point: { ...common, ...ended, times: merged.times, values: merged.values },
    conflicts: merged.conflicts,
  };
}

function joinedEnds(columns: readonly ReadingColumn[]): { readonly ended?: Float64Array } {
  const parts = columns.flatMap(({ ended }) => (ended === undefined ? [] : [ended]));
  return parts.length === 0 ? {} : { ended: concatenated(parts).sort() };
}

/** Joined times, made once for all columns of the same files: they go on sharing one array. */
export class JoinedTimes {
  readonly #ids = new Map<Float64Array, number>();
  readonly #joined = new Map<string, Float64Array>();

  of(parts: readonly Float64Array[]): Float64Array {
    const key = parts.map((part) => this.#idOf(part)).join(' ');
    const known = this.#joined.get(key) ?? concatenated(parts);
    this.#joined.set(key, known);
    return known;
  }

  #idOf(part: Float64Array): number {
    const id = this.#ids.get(part) ?? this.#ids.size;
    this.#ids.set(part, id);
    return id;
  }
}

function concatenated(parts: readonly Float64Array[]): Float64Array {
  const whole = new Float64Array(parts.reduce((length, part) => length + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

function mergedByTime(columns: readonly ReadingColumn[]) {
  let times = columns[0]?.times ?? new Float64Array(0);
  let values = columns[0]?.values ?? new Float64Array(0);
  let conflicts = 0;
  for (const column of columns.slice(1)) {
    const merged = mergedPair(times, values, column.times, column.values);
    ({ times, values } = merged);
    conflicts += merged.conflicts;
  }
  return { times, values, conflicts };
}

function mergedPair(
  timesA: Float64Array,
  valuesA: Float64Array,
  timesB: Float64Array,
  valuesB: Float64Array,
) {
  const times = new Float64Array(timesA.length + timesB.length);
  const values = new Float64Array(times.length);
  let a = 0;
  let b = 0;
  let count = 0;
  let conflicts = 0;
  while (a < timesA.length || b < timesB.length) {
    const timeA = a < timesA.length ? timesA[a]! : Number.POSITIVE_INFINITY;
    const timeB = b < timesB.length ? timesB[b]! : Number.POSITIVE_INFINITY;
    const valueA = timeA <= timeB ? valuesA[a++]! : Number.NaN;
    const valueB = timeB <= timeA ? valuesB[b++]! : Number.NaN;
    times[count] = Math.min(timeA, timeB);
    values[count] = Number.isNaN(valueB) ? valueA : valueB;
    if (!Number.isNaN(valueA) && !Number.isNaN(valueB) && valueA !== valueB) conflicts++;
    count++;
  }
  return { times: times.slice(0, count), values: values.slice(0, count), conflicts };
}
