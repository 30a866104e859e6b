import type { ReducedSeries } from '../reduce-series.ts';
import type { Scale } from './scale.ts';

/** Tenths are finer than a screen shows; relative steps, and level runs drawn as one, keep the file small. */
class PathWriter {
  private text = '';
  private x = 0;
  private y = 0;
  /** Length of the level run that is not written yet. */
  private run = 0;

  moveTo(x: number, y: number): void {
    this.finishRun();
    this.x = Math.round(x * 10);
    this.y = Math.round(y * 10);
    this.text += `M${tenths(this.x)} ${tenths(this.y)}`;
  }

  lineTo(x: number, y: number): void {
    const across = Math.round(x * 10) - this.x;
    const down = Math.round(y * 10) - this.y;
    this.x += across;
    this.y += down;
    if (down === 0 && across >= 0 === this.run >= 0) {
      this.run += across;
      return;
    }
    this.finishRun();
    if (down === 0) this.run = across;
    else this.text += `l${tenths(across)}${down < 0 ? '' : ' '}${tenths(down)}`;
  }

  close(): void {
    this.finishRun();
    this.text += 'z';
  }

  toString(): string {
    this.finishRun();
    return this.text;
  }

  private finishRun(): void {
    if (this.run !== 0) this.text += `h${tenths(this.run)}`;
    this.run = 0;
  }
}

function tenths(count: number): string {
  return String(count / 10).replace(/^(-?)0\./, '$1.');
}

/** A line broken at every null. */
export function linePath({ times, values }: ReducedSeries, x: Scale, y: Scale): string {
  const path = new PathWriter();
  let drawing = false;
  values.forEach((value, index) => {
    if (value === null) drawing = false;
    else if (drawing) path.lineTo(x(times[index]!), y(value));
    else {
      path.moveTo(x(times[index]!), y(value));
      drawing = true;
    }
  });
  return path.toString();
}

/** The area between two lines over the same times, broken wherever either is null. */
export function bandPath(
  times: readonly number[],
  low: readonly (number | null)[],
  high: readonly (number | null)[],
  x: Scale,
  y: Scale,
): string {
  const path = new PathWriter();
  let start = 0;
  for (let i = 0; i <= times.length; i++) {
    if (i < times.length && low[i] !== null && high[i] !== null) continue;
    if (i - start >= 2) {
      path.moveTo(x(times[start]!), y(high[start]!));
      for (let k = start + 1; k < i; k++) path.lineTo(x(times[k]!), y(high[k]!));
      for (let k = i - 1; k >= start; k--) path.lineTo(x(times[k]!), y(low[k]!));
      path.close();
    }
    start = i + 1;
  }
  return path.toString();
}
