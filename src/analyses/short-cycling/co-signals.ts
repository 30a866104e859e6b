import { quantile } from '../../maths/quantile.ts';
import type { Grid } from '../../model/grid.ts';
import { indexAt, minuteOfDay, samplesIn } from '../../model/grid.ts';
import { targetAt } from '../../model/record.ts';
import { runThreshold } from '../../signals/run-threshold.ts';
import type { CircuitSignals, GroupSignals } from '../../signals/types.ts';
import type { Run } from './run-history.ts';
import { settings } from './settings.ts';

/** A stop this far under the target, as a share of the absolute target, is a low-pressure cut-out. */
const cutOutShare = 0.75;

/** What the suction pressure and the valves did at the machine's stops and starts: hints at the cause. */
export function coSignals(
  since: readonly Run[],
  group: GroupSignals,
  members: readonly CircuitSignals[],
): { [name: string]: number } {
  const grid = group.members.length > 0 ? members[0]!.log.grid : null;
  if (grid === null) return {};
  return {
    ...suctionAtStops(since, group, grid),
    nightShare: nightShare(since, members[0]!, grid),
    noValveOpenShare: noValveOpenShare(since, members, grid),
  };
}

function suctionAtStops(since: readonly Run[], group: GroupSignals, grid: Grid): { [name: string]: number } {
  const pressure = group.group.pressure?.values;
  if (pressure === undefined) return {};
  const stops = since.filter((run) => run.on && run.whole).map((run) => indexAt(grid, run.end));
  const span = samplesIn(grid, 30);
  const swings: number[] = [];
  let cutOuts = 0;
  for (const stop of stops) {
    let low = Number.POSITIVE_INFINITY;
    for (let i = Math.max(0, stop - 2); i <= Math.min(grid.count - 1, stop + 1); i++)
      low = Math.min(low, pressure[i]!);
    if (low < cutOutShare * targetAt(group.group.pressureSetPoint, stop)) cutOuts++;
  }
  for (let k = 0; k < stops.length; k += Math.max(1, Math.floor(stops.length / 200))) {
    const around = pressure.subarray(Math.max(0, stops[k]! - span), stops[k]! + span);
    swings.push(quantile(around, 0.9) - quantile(around, 0.1));
  }
  const swing = quantile(swings, 0.5);
  return {
    suctionSwing: swing,
    tightBand: swing < settings.tightBand.value ? 1 : 0,
    lowPressureStopShare: stops.length > 0 ? cutOuts / stops.length : 0,
  };
}

/** Share of the starts between 22 and 6 o'clock, against the third of the day that this is. */
function nightShare(since: readonly Run[], { log }: CircuitSignals, grid: Grid): number {
  const starts = since.filter((run) => run.on);
  const atNight = starts.filter((run) => {
    const minute = minuteOfDay(grid, log.calendar, indexAt(grid, run.start));
    return minute >= 1320 || minute < 360;
  });
  return atNight.length / starts.length;
}

/** Share of the stops at which no valve of the group was open: the machine was pumping down. */
function noValveOpenShare(since: readonly Run[], members: readonly CircuitSignals[], grid: Grid): number {
  const valves = members.flatMap(({ circuit: { valve } }) =>
    valve === null ? [] : [{ values: valve.values, threshold: runThreshold(valve) }],
  );
  if (valves.length < members.length) return Number.NaN;
  const stops = since.filter((run) => run.on && run.whole).map((run) => indexAt(grid, run.end));
  const pumping = stops.filter((at) => valves.every(({ values, threshold }) => !(values[at]! > threshold)));
  return pumping.length / stops.length;
}
