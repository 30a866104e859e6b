import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf, heldAt } from './evidence.ts';
import type { CircuitHours } from './hours.ts';
import { settings } from './settings.ts';

/**
 * To the end of the log, all probes far under the set point that the export logs, and under their own usual level:
 * the control is not what cools the case. Not told where the set point is only known from the site file, for then a
 * change of it looks the same.
 */
export function overcooled(signals: CircuitSignals, hours: CircuitHours): Evidence[] {
  if (!isSetPointLogged(signals)) return [];
  const known = [...hours.above.keys()].filter((k) => !Number.isNaN(hours.above[k]!));
  const isCold = (k: number) => hours.above[k]! < hours.bias - settings.overcooled.value;
  const first = startOfStretch(known.map(isCold));
  if (known.length - first < settings.endedHours.value) return [];
  const from = known[first]!;
  const fell = hours.probes.every(
    (probe) => median(probe.subarray(from)) < median(probe.subarray(0, from)) - settings.overcooled.value / 2,
  );
  if (!fell) return [];
  const depth = -median(hours.above.subarray(from));
  return [
    evidenceOf(signals, {
      shape: 'override-on',
      from: from * hours.samples,
      to: null,
      certainty: 0.85,
      measures: [
        measure('hoursForced', known.length - first, 'h'),
        measure('underSetPoint', depth, 'K'),
        ...heldAt(signals, from * hours.samples, signals.log.grid.count),
      ],
      features: { hours: known.length - first, still: 1, underSetPoint: depth, overcooled: 1 },
    }),
  ];
}

export function isSetPointLogged({ circuit: { setPoint } }: CircuitSignals): boolean {
  return setPoint !== null && typeof setPoint !== 'number';
}

/** Where the stretch that lasts to the end begins, hours like it counting 1 and others −1.5: the largest such sum. */
function startOfStretch(isSo: readonly boolean[]): number {
  let sum = 0;
  let largest = 0;
  let start = isSo.length;
  for (let i = isSo.length - 1; i >= 0; i--) {
    sum += isSo[i] ? 1 : -1.5;
    if (sum > largest) {
      largest = sum;
      start = i;
    }
  }
  return start;
}
