import { quietDaysOfGroup } from '../figures/quiet-days.ts';
import { huberRegression } from '../maths/huber-regression.ts';
import { median } from '../maths/median.ts';
import { quantile } from '../maths/quantile.ts';
import type { LocalDay } from '../model/grid.ts';
import type { SuctionGroup } from '../model/log.ts';
import { dailyOutdoor, outdoorRecord } from '../norms/outdoor-tie.ts';
import { bubbleTemperature } from '../refrigerants/saturation.ts';
import type { GroupSignals } from '../signals/types.ts';
import type { Celsius, Kelvin } from '../units/quantities.ts';
import type { MonthScope } from './scope.ts';

/** Condensing above its own usual level in the last week of the month. */
export interface CondensingDeparture {
  readonly departure: Kelvin;
  /** Whether what the weather does was taken off, by the outdoor temperature that is logged. */
  readonly isAtSameOutdoor: boolean;
}

const lastDays = 7;
const fewestQuietDays = 7;
/** A line over the outdoor temperature needs so many quiet days and so wide a range of them. Common practice, no source. */
const fewestLineDays = 10;
const leastOutdoorRange: Kelvin = 4;

/** Median over the day of the condensing (bubble) temperature; NaN where discharge or refrigerant are not known. */
function condensingOf({ discharge, refrigerant }: SuctionGroup, { from, to }: LocalDay): Celsius {
  if (discharge === null || refrigerant === null) return Number.NaN;
  return bubbleTemperature(refrigerant, quantile(discharge.values.subarray(from, to), 0.5));
}

/**
 * The last seven days of the month against the group's quiet days: at the same outdoor temperature where that is
 * logged and varied enough for a line, else as it stands. Null where either is not known. Days of the last week do
 * not teach what is usual.
 */
export function condensingDeparture(of: GroupSignals, scope: MonthScope): CondensingDeparture | null {
  const { log, month, diagnosis } = scope;
  if (of.group.discharge === null || of.group.refrigerant === null) return null;
  const last = month.days.slice(-lastDays);
  const quiet = quietDaysOfGroup(of, diagnosis.findings, log).map((is, d) => is && !last.includes(d));
  const condensing = log.calendar.days.map((day) => condensingOf(of.group, day));
  const known = condensing.flatMap((value, d) => (quiet[d] && !Number.isNaN(value) ? [d] : []));
  if (known.length < fewestQuietDays) return null;
  const expected = expectedBy(scope, known, condensing);
  const usual = median(known.map((d) => condensing[d]!));
  const away = last.map((d) => condensing[d]! - (expected === null ? usual : expected(d)));
  const departure = median(away);
  return Number.isNaN(departure) ? null : { departure, isAtSameOutdoor: expected !== null };
}

function expectedBy(
  { log }: MonthScope,
  known: readonly number[],
  condensing: readonly Celsius[],
): ((day: number) => Celsius) | null {
  const record = outdoorRecord(log);
  if (record === null) return null;
  const outdoor = dailyOutdoor(record, log);
  const days = known.filter((d) => !Number.isNaN(outdoor[d]!));
  const x = days.map((d) => outdoor[d]!);
  if (x.length < fewestLineDays || Math.max(...x) - Math.min(...x) < leastOutdoorRange) return null;
  const { intercept, slope } = huberRegression(
    x,
    days.map((d) => condensing[d]!),
  );
  return (day) => intercept + slope * outdoor[day]!;
}
