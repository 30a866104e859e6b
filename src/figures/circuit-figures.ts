import type { CircuitSignals } from '../signals/types.ts';
import { airFigures } from './air-figures.ts';
import { type BlockReadings, settledReadings } from './block-readings.ts';
import type { ClockBlocks } from './clock-blocks.ts';
import type { Figure } from './figure.ts';
import { recoveryFigure } from './recovery-figure.ts';
import { valveFigures } from './valve-figures.ts';

/** Everything that is followed on one circuit; figures of which nothing is known are left out. */
export function circuitFigures(
  signals: CircuitSignals,
  blocks: ClockBlocks,
  readings: readonly BlockReadings[] = settledReadings(signals, blocks).probes,
): Figure[] {
  return [
    ...airFigures(signals, blocks, readings),
    recoveryFigure(signals, blocks),
    ...valveFigures(signals, blocks),
  ].filter(({ values }) => values.some((value) => !Number.isNaN(value)));
}

/** By id and point, the same in every history of one circuit. */
export function figureKey({ id, point }: Pick<Figure, 'id' | 'point'>): string {
  return point === null ? id : `${id} ${point}`;
}
