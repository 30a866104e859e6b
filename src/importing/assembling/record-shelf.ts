import type { Grid } from '../../model/grid.ts';
import type { Record } from '../../model/record.ts';
import type { Kilopascal } from '../../units/quantities.ts';
import { ucumCode } from '../../units/ucum.ts';
import type { Point } from '../points/point.ts';
import { alignChanges, alignSampled, holdIntervals, standsOnGrid } from './align.ts';
import { changesWithin, emptyRows } from './changes.ts';
import { insideStep, toInsideValues, toStates } from './inside-values.ts';
import type { Meaning } from './meaning.ts';
import { resolutionOf } from './resolution.ts';
import { silentSamples } from './silence.ts';
import { usualInterval } from './usual-interval.ts';

/** Makes the record of each point once, whatever number of places uses it. */
export class RecordShelf {
  readonly #records = new Map<Point, Record>();
  readonly #onGrid = new Map<Float64Array, boolean>();
  readonly #grid: Grid;
  readonly #atmosphere: Kilopascal;
  readonly #points: readonly Point[];
  readonly #empty = new Map<Float64Array, Uint8Array>();
  #silent: Uint8Array | null = null;

  constructor(points: readonly Point[], grid: Grid, atmosphere: Kilopascal) {
    this.#points = points;
    this.#grid = grid;
    this.#atmosphere = atmosphere;
  }

  has(point: Point): boolean {
    return this.#records.has(point);
  }

  recordOf(point: Point, meaning: Meaning): Record {
    const made = this.#records.get(point) ?? this.#make(point, meaning);
    this.#records.set(point, made);
    return made;
  }

  #make(point: Point, { quantity, unit, onAbove }: Meaning): Record {
    const grid = this.#grid;
    const atmosphere = this.#atmosphere;
    const sampled = point.logging === 'sampled';
    const interval = sampled ? usualInterval(point.times, point.values) : grid.stepMs;
    const intervalMs = Number.isNaN(interval) ? grid.stepMs : interval;
    const step = quantity === 'status' ? 1 : resolutionOf(point.values);
    const [first, last] = endsOf(point);
    const changes =
      !sampled && quantity === 'status'
        ? changesWithin(point, grid, this.#unknownRows(point), this.#silence())
        : null;
    const values = sampled
      ? alignSampled(
          point,
          grid,
          holdIntervals * Math.max(intervalMs, grid.stepMs),
          this.#standsOnGrid(point),
        )
      : alignChanges(point, grid, this.#silence(), this.#unknownRows(point));
    if (onAbove !== null) {
      toStates(values, onAbove);
      if (changes !== null) toStates(changes.values, onAbove);
    }
    if (quantity !== 'status') toInsideValues(values, unit, quantity, atmosphere);
    return {
      point: point.name,
      quantity,
      exportUnit: ucumCode(unit),
      values,
      resolution: step === 0 ? 0 : insideStep(step, unit, quantity, atmosphere),
      intervalMs,
      logging: point.logging,
      changes,
      first,
      last,
    };
  }

  #standsOnGrid(point: Point): boolean {
    const known = this.#onGrid.get(point.times);
    if (known !== undefined) return known;
    const answer = point.times.length > 0 && standsOnGrid(point.times, this.#grid);
    this.#onGrid.set(point.times, answer);
    return answer;
  }

  /** Rows from which on nothing is known of the point: those of its table without any value, and words in its place. */
  #unknownRows(point: Point): Uint8Array {
    const empty = this.#emptyRows(point);
    const { times, values, ended } = point;
    if (ended === undefined) return empty;
    const unknown = empty.slice();
    let next = 0;
    for (let row = 0; row < times.length && next < ended.length; row++) {
      while (next < ended.length && ended[next]! < times[row]!) next++;
      if (ended[next] === times[row] && Number.isNaN(values[row]!)) unknown[row] = 1;
    }
    return unknown;
  }

  #emptyRows({ times }: Point): Uint8Array {
    const known = this.#empty.get(times) ?? emptyRows(times, this.#points);
    this.#empty.set(times, known);
    return known;
  }

  #silence(): Uint8Array {
    this.#silent ??= silentSamples(this.#points, this.#grid);
    return this.#silent;
  }
}

function endsOf({ times, values }: Point): [number | null, number | null] {
  let first = 0;
  while (first < values.length && Number.isNaN(values[first]!)) first++;
  if (first === values.length) return [null, null];
  let last = values.length - 1;
  while (Number.isNaN(values[last]!)) last--;
  return [times[first]!, times[last]!];
}
