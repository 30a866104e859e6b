import { median } from '../../maths/median.ts';
import { quantile } from '../../maths/quantile.ts';
import type { Evidence } from '../../model/evidence.ts';
import { samplesIn } from '../../model/grid.ts';
import type { Log, SuctionGroup } from '../../model/log.ts';
import { dewTemperature, knownRefrigerant } from '../../refrigerants/saturation.ts';
import { runThreshold } from '../../signals/run-threshold.ts';
import type { GroupSignals, Signals } from '../../signals/types.ts';
import type { Kilopascal } from '../../units/quantities.ts';
import { measure } from '../evidence-parts.ts';
import { type CondensingNorm, condensingNorm } from './condensing-norm.ts';
import { evidenceOf } from './evidence.ts';
import { creptDays, type HighPeriod, highHours } from './high-period.ts';
import { hourlyMeans, hoursOfDay } from './hourly.ts';
import { outdoorOf } from './outdoor.ts';
import { settings } from './settings.ts';

const hourMs = 3_600_000;

/**
 * Condensing well above what its own norm allows at the same outdoor temperature. Where the refrigerant is not known
 * the logarithm of the pressure stands in, which is nearly straight in the condensing temperature; without an outdoor
 * temperature that would say nothing.
 */
export function condensingHigh(group: GroupSignals, { log }: Signals): Evidence[] {
  const { discharge } = group.group;
  if (discharge === null) return [];
  const refrigerant = knownRefrigerant(group.group.refrigerant ?? '');
  const outdoorRecord = outdoorOf(group, log);
  if (refrigerant === null && outdoorRecord === null) return [];
  const condensing = hourlyMeans(discharge, log.grid).map((pressure) =>
    refrigerant === null ? condensingScale(pressure) : dewTemperature(refrigerant, pressure),
  );
  const outdoor = hourlyMeans(outdoorRecord, log.grid);
  const normDays = Math.min(log.calendar.days.length, Math.max(5, Math.ceil(log.calendar.days.length / 3)));
  const normHours = hoursOfDay(log.calendar.days[normDays - 1]!, log.grid).to;
  const running = outdoorRecord === null ? null : runningMachines(group.group, log);
  const norm = condensingNorm({ condensing, outdoor, running }, normHours, refrigerant !== null);
  if (norm === null && refrigerant === null) return [];
  const usual = norm?.at ?? highestUsual(condensing, normHours);
  const excess = condensing.map((value, hour) => value - usual(hour));
  const period =
    norm === null
      ? highHours(excess, 1.5 * settings.condensingRise.value, log)
      : (highHours(excess, settings.condensingRise.value, log) ??
        creptDays(excess, settings.condensingCrept.value, log));
  if (period === null) return [];
  const isOver = period.to !== null && (norm === null || wouldShow(condensing, excess, norm, period, log));
  return [
    evidenceOf(group, {
      shape: 'condensing-high',
      onset: log.grid.startMs + period.from * hourMs,
      end: isOver ? log.grid.startMs + period.to! * hourMs : null,
      certainty: (norm === null ? 0.5 : 0.7) + 0.25 * period.share,
      measures: [measure('condensingRise', period.height, 'K')],
      features: {
        condensingRise: period.height,
        daysShare: period.share,
        refrigerantKnown: refrigerant === null ? 0 : 1,
        outdoorKnown: norm === null ? 0 : 1,
        machinesKnown: norm === null || running === null ? 0 : 1,
        creeping: period.isCreeping ? 1 : 0,
      },
      points: [discharge.point, outdoorRecord?.point],
    }),
  ];
}

/**
 * Whether what was seen would have been seen again, had it lasted: a condenser that stands on its floor in cool weather, or at
 * a small load, tells nothing of its dirt.
 */
function wouldShow(
  condensing: Float64Array,
  excess: Float64Array,
  { at, line }: CondensingNorm,
  { from, to }: HighPeriod,
  log: Log,
): boolean {
  const limit = settings.condensingRise.value;
  const high = [...excess.keys()].filter((hour) => hour >= from && hour < to! && excess[hour]! > limit);
  const rise = median(high.map((hour) => condensing[hour]! - line(hour)));
  const shown = excess.map((_, hour) => (hour < to! ? 0 : line(hour) + rise - at(hour)));
  return highHours(shown, limit, log) !== null;
}

/** Steps as kelvins of condensing temperature do, from no particular zero, and by no more than they. */
function condensingScale(pressure: Kilopascal): number {
  return (100 * Math.log(pressure)) / settings.condensingSlope.value;
}

/** Machines that run, on the mean of each hour; null where none is logged. */
function runningMachines({ compressors }: SuctionGroup, { grid }: Log): Float64Array | null {
  if (compressors.length === 0) return null;
  const hour = samplesIn(grid, 60);
  const machines = compressors.map((record) => ({ record, threshold: runThreshold(record) }));
  return Float64Array.from({ length: Math.ceil(grid.count / hour) }, (_, k) => {
    const to = Math.min(grid.count, (k + 1) * hour);
    let running = 0;
    for (const { record, threshold } of machines) {
      for (let i = k * hour; i < to; i++) if (record.values[i]! > threshold) running++;
    }
    return running / (to - k * hour);
  });
}

/** Without an outdoor temperature: what nine tenths of the norm stayed under. */
function highestUsual(condensing: Float64Array, normHours: number): () => number {
  const top = quantile(condensing.subarray(0, normHours), 0.9);
  return () => top;
}
