import { clearRamp } from '../../maths/fit-ramp.ts';
import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { timeAt } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { changeEvidence } from './change-evidence.ts';
import { findStep } from './find-step.ts';
import type { OffsetTable } from './offset-table.ts';
import { pairDifferences } from './pair-differences.ts';
import { settings } from './settings.ts';

const longestDays = 3;
/** How exactly the difference must turn over, as a share of its change, and at least, K. */
const turnShare = 0.15;
const turnLeast = 0.2;
/** Many pairs are tried: the exchange must be large enough not to be chance, K. */
const leastExchange = 1.2;
const clarity = {
  leastSize: settings.minimumShift.value,
  leastScales: 4,
  leastScale: 0.08,
  leastExplained: 0.6,
};

/**
 * Two probes that exchanged their places in the record: their difference changes its sign at one moment and keeps
 * its size, and against the rest one goes up by what the other goes down. With two probes only the first holds.
 */
export function swappedProbes(
  signals: CircuitSignals,
  table: OffsetTable,
  living: readonly number[],
): Evidence[] {
  for (const { first, second, days } of pairDifferences(signals, living)) {
    const ramp = clearRamp(
      days.map((_, day) => day),
      days,
      clarity,
    );
    if (ramp === null || ramp.end - ramp.start > longestDays) continue;
    const size = Math.abs(ramp.after - ramp.before);
    const slack = Math.max(turnLeast, turnShare * size);
    if (Math.abs(ramp.after + ramp.before) > slack) continue;
    const rest = living.filter((probe) => probe !== first && probe !== second);
    if (rest.length > 0 && !mirrored(signals, first, second, rest, ramp, slack)) continue;
    const change = { ...ramp, endedOn: null };
    const at = findStep(signals, table, first, [second], change);
    if (at === null || size < leastExchange) continue;
    return [
      changeEvidence(signals, first, [second], {
        shape: 'swapped',
        onset: timeAt(signals.log.grid, at),
        end: null,
        certainty: rest.length > 0 ? 0.85 : 0.6,
        shift: ramp.after - ramp.before,
        error: ramp.scale,
        features: { probes: living.length, partner: second },
      }),
    ];
  }
  return [];
}

function mirrored(
  signals: CircuitSignals,
  first: number,
  second: number,
  rest: readonly number[],
  ramp: { readonly start: number; readonly end: number },
  slack: number,
): boolean {
  const shift = (probe: number): number => {
    const offsets = signals.probes[probe]!.median.map(
      (value, day) => value - median(rest.map((other) => signals.probes[other]!.median[day]!)),
    );
    return median(offsets.subarray(ramp.end)) - median(offsets.subarray(0, ramp.start + 1));
  };
  const up = shift(first);
  const down = shift(second);
  return Math.abs(up + down) <= slack && Math.min(Math.abs(up), Math.abs(down)) >= 0.35 * leastExchange;
}
