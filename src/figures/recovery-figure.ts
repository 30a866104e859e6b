import { median } from '../maths/median.ts';
import type { CircuitSignals } from '../signals/types.ts';
import type { ClockBlocks } from './clock-blocks.ts';
import type { Figure } from './figure.ts';

/** Recovery of the defrosts that began in a block, usually one. */
export function recoveryFigure({ defrosts, usable }: CircuitSignals, blocks: ClockBlocks): Figure {
  const values = new Float64Array(blocks.count).fill(Number.NaN);
  const byBlock = new Map<number, number[]>();
  for (const window of defrosts) {
    if (!window.complete) continue;
    const block = blocks.of[window.from]!;
    const list = byBlock.get(block) ?? [];
    window.probes.forEach((probe, k) => {
      if (usable[k]) list.push(probe.recoveryMinutes ?? probe.watchedMinutes);
    });
    byBlock.set(block, list);
  }
  for (const [block, list] of byBlock) values[block] = median(list);
  return { id: 'recovery', point: null, unit: 'min', values };
}
