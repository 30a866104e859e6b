import { selectQuantile } from '../maths/select-rank.ts';
import { samplesIn, stepMinutes } from '../model/grid.ts';
import type { CircuitSignals } from '../signals/types.ts';
import { Phase } from '../signals/types.ts';
import { leastBlockMinutes } from './air-figures.ts';
import type { ClockBlocks } from './clock-blocks.ts';
import type { Figure } from './figure.ts';
import { valveUse } from './valve-use.ts';

const openAbove = 0.03;

/** Duty, openings an hour (of an on/off valve) and superheat while feeding; nothing without the columns. */
export function valveFigures(signals: CircuitSignals, blocks: ClockBlocks): Figure[] {
  const { valve, superheat } = signals.circuit;
  const duty = dutyFigures(signals, blocks);
  if (superheat === null) return duty;
  const values = feedingMedians(superheat.values, valve?.values ?? null, signals, blocks);
  return [...duty, { id: 'superheat', point: superheat.point, unit: 'K', values }];
}

function dutyFigures({ circuit: { valve }, phase, log }: CircuitSignals, blocks: ClockBlocks): Figure[] {
  if (valve === null) return [];
  const least = samplesIn(log.grid, leastBlockMinutes);
  const hours = stepMinutes(log.grid) / 60;
  const duty = unknownBlocks(blocks);
  const rate = unknownBlocks(blocks);
  for (const { block, from, to } of blocks.runs) {
    const { known, fed, starts } = valveUse(valve.values, phase, from, to);
    if (known < least) continue;
    duty[block] = fed / known;
    rate[block] = starts / (known * hours);
  }
  const dutyFigure = { id: 'duty', point: null, unit: '1', values: duty } as const;
  const rateFigure = { id: 'valve-starts', point: null, unit: '{starts}/h', values: rate } as const;
  return valve.quantity === 'status' ? [dutyFigure, rateFigure] : [dutyFigure];
}

/** @param openings null where no valve is logged: then all settled air counts */
function feedingMedians(
  superheat: Float64Array,
  openings: Float64Array | null,
  { phase, log }: CircuitSignals,
  blocks: ClockBlocks,
): Float64Array {
  const least = samplesIn(log.grid, leastBlockMinutes);
  const medians = unknownBlocks(blocks);
  const feeding = new Float64Array(Math.max(...blocks.runs.map(({ from, to }) => to - from)));
  for (const { block, from, to } of blocks.runs) {
    let count = 0;
    for (let i = from; i < to; i++) {
      const feeds = phase[i] === Phase.cooling && (openings === null || openings[i]! > openAbove);
      if (feeds && !Number.isNaN(superheat[i]!)) feeding[count++] = superheat[i]!;
    }
    if (count >= least) medians[block] = selectQuantile(feeding, 0.5, count);
  }
  return medians;
}

function unknownBlocks({ count }: ClockBlocks): Float64Array {
  return new Float64Array(count).fill(Number.NaN);
}
