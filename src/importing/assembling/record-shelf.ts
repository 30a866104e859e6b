import type { Grid } from '../../model/grid.ts';
import type { Changes, Record } from '../../model/record.ts';
import type { Kilopascal } from '../../units/quantities.ts';
import { ucumCode } from '../../units/ucum.ts';
import { alignChanges, alignSampled, holdIntervals, standsOnGrid } from './align.ts';
import { lowerBound } from './file-families.ts';
import { insideStep, toInsideValues, toStates } from './inside-values.ts';
import type { Meaning } from './meaning.ts';
import type { Point } from './point.ts';
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
    const changes = !sampled && quantity === 'status' ? changesWithin(point, grid, onAbove) : null;
    const values = sampled
      ? alignSampled(
          point,
          grid,
          holdIntervals * Math.max(intervalMs, grid.stepMs),
          this.#standsOnGrid(point),
        )
      : alignChanges(point, grid, this.#silence());
    if (onAbove !== null) toStates(values, onAbove);
    else if (quantity !== 'status') toInsideValues(values, unit, quantity, atmosphere);
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

/** The changes from the one in force at the first sample to the end of the grid. */
function changesWithin({ times, values }: Point, grid: Grid, onAbove: number | null): Changes {
  const from = Math.max(0, lowerBound(times, grid.startMs + 1) - 1);
  const to = lowerBound(times, grid.startMs + (grid.count - 1) * grid.stepMs + 1);
  const states = values.slice(from, to);
  if (onAbove !== null) toStates(states, onAbove);
  return { times: times.slice(from, to), values: states };
}
