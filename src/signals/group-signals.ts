import { median } from '../maths/median.ts';
import type { Calendar } from '../model/grid.ts';
import type { SuctionGroup } from '../model/log.ts';
import { dewTemperature } from '../refrigerants/saturation.ts';
import { dailyPressure } from './daily-pressure.ts';
import { runThreshold } from './run-threshold.ts';
import { spellsOf } from './spells.ts';
import type { CircuitSignals, GroupSignals } from './types.ts';

/** A circuit's own baseline is the median of its first third of days, of at least this many. */
const fewestBaselineDays = 5;

/** `suction`: its daily pressure, kPa absolute. */
export function groupSignals(
  group: SuctionGroup,
  suction: Float64Array,
  members: readonly CircuitSignals[],
  calendar: Calendar,
): GroupSignals {
  const departures = new Map(members.map((member) => [member.circuit.id, departure(member, calendar)]));
  const peers = new Map(
    members.map((member) => [member.circuit.id, peerMovement(member.circuit.id, departures, calendar)]),
  );
  return {
    group,
    members: members.map((member) => member.circuit.id),
    suction,
    suctionTarget: dailyPressure(group.pressureSetPoint, calendar),
    saturatedSuction: suction.map((pressure) =>
      group.refrigerant === null || Number.isNaN(pressure)
        ? Number.NaN
        : dewTemperature(group.refrigerant, pressure),
    ),
    peers,
    departures,
    compressorSpells: group.compressors.map((record) => spellsOf(record.values, runThreshold(record))),
  };
}

/** The circuit's daily level less its baseline; steps of an unlogged set point taken out. */
function departure(member: CircuitSignals, calendar: Calendar): Float64Array {
  const level = Float64Array.from(member.level);
  for (const step of member.setPointSteps) {
    if (step.source === 'column') continue;
    calendar.days.forEach((day, d) => {
      if (day.from >= step.at) level[d]! -= step.to - step.from;
      else if (day.to > step.at) level[d] = Number.NaN;
    });
  }
  const known = level.filter((value) => !Number.isNaN(value));
  const baseline = median(known.subarray(0, Math.max(fewestBaselineDays, Math.ceil(known.length / 3))));
  return level.map((value) => value - baseline);
}

/**
 * The daily median departure of the others. Of two others the smaller movement counts, so that one of them cannot
 * pass its own fault on; one other is no common cause.
 */
function peerMovement(
  id: string,
  departures: ReadonlyMap<string, Float64Array>,
  calendar: Calendar,
): Float64Array {
  const others = [...departures].filter(([other]) => other !== id).map(([, days]) => days);
  return Float64Array.from(calendar.days, (_, d) => {
    const known = others.map((days) => days[d]!).filter((value) => !Number.isNaN(value));
    if (known.length < 2) return Number.NaN;
    if (known.length > 2) return median(known);
    return Math.abs(known[0]!) < Math.abs(known[1]!) ? known[0]! : known[1]!;
  });
}
