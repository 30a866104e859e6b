import { analyse } from '../../../src/analyses/rack-pressure/index.ts';
import type { Circuit, SuctionGroup } from '../../../src/model/log.ts';
import type { Record } from '../../../src/model/record.ts';
import { computeSignals } from '../../../src/signals/compute-signals.ts';
import { gridOf, groupOf, handMadeLog, recordOf, valuesOf } from '../../support/hand-made-log.ts';
import { noise, simpleCase } from '../../support/simple-case.ts';

export const days = 16;
export const grid = gridOf(days, 5);
export const day = (minute: number) => minute / 1440;
export const psig = (gauge: number) => gauge * 6.894757 + 101.325;

export function pressureOf(gauge: (minute: number) => number): Record {
  const random = noise(7);
  const values = valuesOf(grid, (minute) => psig(gauge(minute) + random() + 1.5 * Math.sin(minute / 200)));
  return recordOf('S1 suction', 'pressure', values, { exportUnit: '[psi]', resolution: 0.69 });
}

export function judge(
  group: Partial<SuctionGroup>,
  circuits: readonly Circuit[] = [],
  unassigned: readonly Record[] = [],
) {
  const parts = { days, stepMinutes: 5, circuits, suctionGroups: [groupOf(group)], unassigned };
  const site = computeSignals(handMadeLog(parts));
  return analyse(site.groups[0]!, site);
}

export const fiveCircuits = (
  cooling: (minute: number) => number,
  isOff: (minute: number) => boolean = () => false,
) =>
  ['M01', 'M02', 'M03', 'M04', 'M05'].map((id, i) =>
    simpleCase(grid, { id, seed: i + 1, probes: 2, suctionGroup: 'S1', cooling, isOff }),
  );
