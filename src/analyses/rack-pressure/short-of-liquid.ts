import { fitRamp, isClear } from '../../maths/fit-ramp.ts';
import { mean } from '../../maths/mean.ts';
import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { timeAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../../signals/types.ts';
import { defrostAnswer } from '../defrost-answer.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf } from './evidence.ts';
import { hoursOfDay } from './hourly.ts';
import { runningIn } from './running.ts';
import { settings } from './settings.ts';
import type { SuctionHours } from './suction-hours.ts';

/** Circuits of which so few want have no common want. */
const fewestCircuits = 3;
/** … and so many of them must be warm, or come back late, for it to be worth a word. */
const fewestHarmed = 2;
const fewestBaselineDays = 5;
const fewestDaysBefore = 3;
const daysJudged = 3;
/** A part counts for no more than this, so that one that runs away does not stand for the others. */
const mostOfAPart = 2;
/** A day's recovery is read to the logging step; a minute is added before the logarithm so that none is 0. */
const smallestMinutes = 1;
/** A recovery that grew by less, min, is late by nothing that anybody would see. */
const leastLateness = 10;
const leastDays = 4;
const clarity = { leastScales: 4, leastScale: 0.08, leastExplained: 0.6 };

/** How much more of its cooling a circuit asks for than it used to, on each day; about 1 is plainly more. */
interface Want {
  readonly circuit: CircuitSignals;
  /** Mean of what is known of the three below. NaN where nothing is. */
  readonly days: Float64Array;
  readonly duty: Float64Array;
  /** ln(recovery ÷ usual recovery). */
  readonly lateness: Float64Array;
  readonly air: Float64Array;
}

/**
 * Circuits that ask ever more of their cooling together (valves that feed longer, air that comes back later after defrost and
 * stands higher) while the suction pressure holds and the machines have no more to do: it is not the rack's capacity, and no heavier
 * load, but refrigerant that does not reach their coils. Daily figures of each circuit against its own first third; the median over the circuits,
 * less what the circuits of the other groups do, must be up by a clear ramp. Where the air of the defrosts rises as slowly as over laden
 * coils they are frosted instead.
 */
export function shortOfLiquid(
  group: GroupSignals,
  members: readonly CircuitSignals[],
  hours: SuctionHours,
  site: Signals,
): Evidence[] {
  const { log } = site;
  if (!holdsSuction(hours, log)) return [];
  const wants = members.map((one) => wantOf(one, group)).filter(({ days }) => days.some(Number.isFinite));
  if (wants.length < fewestCircuits) return [];
  const common = middleOf(wants, log);
  if (!(lately(common) >= settings.want.value)) return [];
  const elsewhere = middleOf(othersOf(group, site), log);
  const own = common.map((value, day) => value - Math.max(0, elsewhere[day] || 0));
  const ramp = fitRamp(
    own.map((_, day) => day),
    own,
  );
  if (ramp === null || ramp.start + 1 < fewestDaysBefore || own.length - 1 - ramp.start < leastDays)
    return [];
  const rise = ramp.after - ramp.before;
  if (rise <= 0 || !isClear(ramp, { leastSize: settings.want.value, ...clarity })) return [];
  if (!(lately(own) - ramp.before >= settings.want.value)) return [];

  const wanting = wants.filter(({ days }) => lately(days) >= settings.want.value / 2);
  const warm = wanting.filter(({ air }) => lately(air) >= settings.warmRise.value);
  const harmed = wanting.filter((one) => warm.includes(one) || isLate(one));
  const share = wanting.length / wants.length;
  if (share < settings.warmShare.value || wanting.length < fewestCircuits || harmed.length < fewestHarmed)
    return [];
  const busier = machinesBusier(group, ramp.start, log);
  if (busier > settings.busier.value) return [];
  const rates = median(
    wanting.map(({ circuit }) => defrostAnswer(circuit, ramp.start).riseRateRatio ?? Number.NaN),
  );
  if (rates < settings.frostedRate.value) return [];

  const { from, to } = log.calendar.days[ramp.start]!;
  const harmedShare = harmed.length / wants.length;
  return [
    evidenceOf(group, {
      shape: 'short-of-liquid',
      onset: timeAt(log.grid, Math.floor((from + to) / 2)),
      end: null,
      certainty:
        0.65 +
        (share >= 0.8 ? 0.1 : 0) +
        (Number.isNaN(busier) ? 0 : 0.08) +
        (Number.isNaN(rates) ? 0 : 0.05) +
        Math.min(0.1, (rise - settings.want.value) / 5),
      measures: [
        measure('circuitsShort', 100 * share, '%'),
        measure('feedRise', 100 * median(wanting.map(({ duty }) => lately(duty))), '%'),
        measure('recoveryTimes', Math.exp(median(wanting.map(({ lateness }) => lately(lateness)))), '1'),
        measure('circuitRise', median(wanting.map(({ air }) => lately(air))), 'K'),
      ],
      features: {
        shareShort: share,
        shareHarmed: harmedShare,
        shareWarm: warm.length / wants.length,
        machinesBusier: busier,
        groupRiseRate: rates,
        othersWant: lately(elsewhere),
      },
      points: [group.group.pressure?.point, ...wanting.map(({ circuit }) => circuit.circuit.valve?.point)],
    }),
  ];
}

/** Neither above its norm nor taken higher with its target than that floated on some day of the first third. */
function holdsSuction({ aboveNorm, targetMoved, hasTarget }: SuctionHours, { calendar, grid }: Log): boolean {
  const moved = aboveNorm.map((value, hour) => value + (hasTarget ? targetMoved[hour]! : 0));
  const normDays = Math.max(fewestBaselineDays, Math.ceil(calendar.days.length / 3));
  const usual = calendar.days.slice(0, normDays).map((day) => {
    const { from, to } = hoursOfDay(day, grid);
    return median(moved.subarray(from, to));
  });
  const highest = Math.max(0, ...usual.filter(Number.isFinite));
  return median(moved.subarray(-24 * daysJudged)) < highest + settings.crept.value / 2;
}

function wantOf(circuit: CircuitSignals, group: GroupSignals | undefined): Want {
  const usable = circuit.probes.filter((_, i) => circuit.usable[i]);
  const recovery = circuit.level.map((_, day) =>
    Math.log(median(usable.map((probe) => probe.recovery[day]!)) + smallestMinutes),
  );
  const duty = overUsual(circuit.duty);
  const lateness = overUsual(recovery);
  const air = group?.departures.get(circuit.circuit.id) ?? overUsual(circuit.level);
  const parts = [
    duty.map((value) => value / settings.wantDuty.value),
    lateness.map((value) => value / Math.log(settings.wantRecovery.value)),
    air.map((value) => value / settings.warmRise.value),
  ].map((part) => part.map((value) => Math.max(-mostOfAPart, Math.min(mostOfAPart, value))));
  const days = circuit.level.map((_, day) => mean(parts.map((part) => part[day]!).filter(Number.isFinite)));
  return { circuit, days, duty, lateness, air };
}

/** Less the median of the first third of its known days, of five at least. */
function overUsual(days: Float64Array): Float64Array {
  const known = days.filter(Number.isFinite);
  const usual = median(known.subarray(0, Math.max(fewestBaselineDays, Math.ceil(known.length / 3))));
  return days.map((value) => value - usual);
}

/** The circuits of the site that another group feeds: weather and trade reach them, too. */
function othersOf(group: GroupSignals, { circuits, groups }: Signals): Want[] {
  return circuits
    .filter(({ circuit }) => !group.members.includes(circuit.id))
    .map((circuit) =>
      wantOf(
        circuit,
        groups.find(({ members }) => members.includes(circuit.circuit.id)),
      ),
    );
}

function middleOf(wants: readonly Want[], { calendar }: Log): Float64Array {
  return Float64Array.from(calendar.days, (_, day) => median(wants.map(({ days }) => days[day]!)));
}

function lately(days: Float64Array): number {
  return median(days.filter(Number.isFinite).subarray(-daysJudged));
}

/** Its recovery takes some minutes and as many times longer as is plain. */
function isLate({ circuit, lateness }: Want): boolean {
  const times = Math.exp(lately(lateness));
  const minutes = median(circuit.probes.map(({ recovery }) => lately(recovery)));
  return times >= settings.wantRecovery.value && minutes * (1 - 1 / times) >= leastLateness;
}

/** By how much the share of the machines that run grew since `day`; NaN where none is logged. */
function machinesBusier(group: GroupSignals, day: number, log: Log): number {
  const { days } = log.calendar;
  const hoursFrom = (first: number, last: number): number[] => {
    const from = hoursOfDay(days[first]!, log.grid).from;
    const { to } = hoursOfDay(days[last]!, log.grid);
    return Array.from({ length: to - from }, (_, k) => from + k);
  };
  const last = days.length - 1;
  const before = runningIn(group, hoursFrom(0, day), 0, log.grid);
  const now = runningIn(group, hoursFrom(Math.max(day, last + 1 - daysJudged), last), 0, log.grid);
  return before === null || now === null ? Number.NaN : now.runningShare - before.runningShare;
}
