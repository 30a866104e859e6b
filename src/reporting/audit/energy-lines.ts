import { type EnergyRange, energyRanges } from '../../audit/energy.ts';
import type { MonthAudit } from '../../audit/month-audit.ts';
import type { Log } from '../../model/log.ts';
import { formatDifference } from '../../units/display.ts';
import { formatNumber } from '../../units/format-number.ts';

/** What the departures cost, as ranges, each with the rule that it comes from. */
export function energyLines({ scope }: MonthAudit): string[] {
  return energyRanges(scope).map((range) => energyText(range, scope.log));
}

function energyText(
  { kind, place, departure, isAtSameOutdoor, low, high, unit, source }: EnergyRange,
  log: Log,
): string {
  const range = `${formatNumber(low, 0)} to ${formatNumber(high, 0)}`;
  if (kind === 'suction-low') {
    return `${place}: suction stands ${formatDifference(departure, log.units)} under its usual level, some ${range} ${unit} more compressor power. Rule of thumb: ${source}.`;
  }
  if (kind === 'condensing-high') {
    const against = isAtSameOutdoor ? 'at the same outdoor temperature' : 'whatever the weather was';
    const weather = isAtSameOutdoor
      ? ''
      : ' No outdoor temperature is logged that could tell the weather from the condenser.';
    return `${place}: condensing stands ${formatDifference(departure, log.units)} over its usual level, ${against}, some ${range} ${unit} more compressor power. Rule of thumb: ${source}.${weather}`;
  }
  return `${place}: the valve is open ${formatNumber(departure * 100, 0)} percentage points longer than in its quiet days, some ${range} kWh a day. Rule of thumb: ${source}. The call-out and the goods weigh more than this.`;
}
