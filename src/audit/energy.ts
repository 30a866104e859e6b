import { quietDaysOfCircuit, quietDaysOfGroup } from '../figures/quiet-days.ts';
import { median } from '../maths/median.ts';
import type { Record } from '../model/record.ts';
import type { GroupSignals } from '../signals/types.ts';
import type { Kelvin } from '../units/quantities.ts';
import { condensingDeparture } from './condensing-high.ts';
import { findingsIn, type MonthScope } from './scope.ts';

/** What a departure costs, always as a range: any single figure would be disputed, rightly. */
export interface EnergyRange {
  readonly kind: 'suction-low' | 'condensing-high' | 'duty-up';
  readonly place: string;
  /** K for suction and condensing, a share for duty. */
  readonly departure: number;
  /** Of condensing: whether the weather was taken off. */
  readonly isAtSameOutdoor?: boolean;
  readonly low: number;
  readonly high: number;
  readonly unit: '%' | 'kW.h/d';
  readonly source: string;
}

const kelvinPerFahrenheit = 5 / 9;
/** Compressor power a °F of saturated suction: 1.4 % for an ideal cycle, some 2 % in the trade press. */
const suctionPercent = { low: 1.4, high: 2.2 };
/**
 * Compressor power a °F of condensing: an ideal cycle between −30 and 40 °C takes 1 ÷ 70 K = 0.8 % a °F more, and 2 % is
 * the upper end of what the trade reckons with. Common practice, no source.
 */
const condensingPercent = { low: 0.8, high: 2 };
/** Condensing follows the weather: without an outdoor temperature only more than that is worth a word. */
const leastCondensing = { atSameOutdoor: 2, asItStands: 4 };
/** Rated cooling of one section of 8 ft and COP that a change of duty is turned into energy with. Common practice. */
const sectionKilowatt = { low: 1.5, high: 3 };
const coefficient = { low: 2, high: 3 };
const leastKelvin: Kelvin = 0.8;
const leastDuty = 0.05;

export function energyRanges(scope: MonthScope): EnergyRange[] {
  return [
    ...scope.signals.groups.flatMap((group) => suctionLow(group, scope)),
    ...condensingHigh(scope),
    ...dutyUp(scope),
  ];
}

/** Condensing above its own usual level: a condenser that is dirty, or has lost a fan. Once for each discharge that is logged. */
function condensingHigh(scope: MonthScope): EnergyRange[] {
  const seen = new Set<Record>();
  return scope.signals.groups.flatMap((group): EnergyRange[] => {
    const { discharge, id } = group.group;
    if (discharge === null || seen.has(discharge)) return [];
    seen.add(discharge);
    const found = condensingDeparture(group, scope);
    if (found === null) return [];
    const { departure, isAtSameOutdoor } = found;
    if (!(departure >= (isAtSameOutdoor ? leastCondensing.atSameOutdoor : leastCondensing.asItStands)))
      return [];
    const fahrenheit = departure / kelvinPerFahrenheit;
    return [
      {
        kind: 'condensing-high',
        place: id,
        departure,
        isAtSameOutdoor,
        low: fahrenheit * condensingPercent.low,
        high: fahrenheit * condensingPercent.high,
        unit: '%',
        source:
          '0.8 to 2 % of compressor power a °F of condensing temperature (ideal cycle between −30 and 40 °C; common practice, no source)',
      },
    ];
  });
}

/** Suction under its own quiet level, as it is lowered to help one warm case. */
function suctionLow(group: GroupSignals, scope: MonthScope): EnergyRange[] {
  const quiet = quietDaysOfGroup(group, scope.diagnosis.findings, scope.log);
  const usual = median(group.saturatedSuction.filter((_, d) => quiet[d] === true));
  const now = median(scope.month.days.slice(-7).map((d) => group.saturatedSuction[d]!));
  const departure = usual - now;
  if (!(departure >= leastKelvin)) return [];
  const fahrenheit = departure / kelvinPerFahrenheit;
  return [
    {
      kind: 'suction-low',
      place: group.group.id,
      departure,
      low: fahrenheit * suctionPercent.low,
      high: fahrenheit * suctionPercent.high,
      unit: '%',
      source: '1.4 to 2.2 % of compressor power a °F of saturated suction (ideal cycle; trade press)',
    },
  ];
}

/** Valves open longer than in the quiet days of the same circuit while a finding stands. */
function dutyUp(scope: MonthScope): EnergyRange[] {
  const troubled = new Set(
    findingsIn(scope)
      .filter(({ severity }) => severity !== 'note')
      .map(({ circuit }) => circuit),
  );
  return scope.signals.circuits.flatMap((signals): EnergyRange[] => {
    const { id, probes } = signals.circuit;
    if (!troubled.has(id)) return [];
    const quiet = quietDaysOfCircuit(signals, scope.diagnosis.findings);
    const usual = median(signals.duty.filter((_, d) => quiet[d] === true));
    const now = median(scope.month.days.filter((d) => quiet[d] === false).map((d) => signals.duty[d]!));
    const departure = now - usual;
    if (!(departure >= leastDuty)) return [];
    return [
      {
        kind: 'duty-up',
        place: id,
        departure,
        low: (probes.length * sectionKilowatt.low * 24 * departure) / coefficient.high,
        high: (probes.length * sectionKilowatt.high * 24 * departure) / coefficient.low,
        unit: 'kW.h/d',
        source:
          '1.5 to 3 kW of cooling a section and a COP of 2 to 3, one section a probe (common practice, no source)',
      },
    ];
  });
}
