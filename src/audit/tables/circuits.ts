import { limitOf } from '../../exposure/circuit-exposure.ts';
import type { SampleRange } from '../../exposure/exposure.ts';
import { median } from '../../maths/median.ts';
import { stepMinutes } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { Phase } from '../../signals/types.ts';
import { airView } from '../air-view.ts';
import type { Month } from '../month.ts';
import type { MonthScope } from '../scope.ts';
import { differenceCell, temperatureCell } from '../scope.ts';
import { readingsIn } from '../settled-air.ts';
import { defineTable } from '../table.ts';
import { valveMonth } from '../valve-month.ts';
import { circuitColumn } from './key-columns.ts';

interface CircuitMonth {
  readonly signals: CircuitSignals;
  readonly setPoint: number;
  readonly median: number;
  readonly spread: number;
  readonly duty: number;
  readonly valveStartsPerHour: number | null;
  readonly defrosts: number;
  readonly defrostsMissed: number;
  readonly defrostsExpected: number;
  readonly recoveryMinutes: number;
  readonly notRecovered: number;
  readonly aboveLimitMinutes: number | null;
  readonly coverage: number;
  readonly limit: number;
}

export const circuitsTable = defineTable<CircuitMonth>({
  name: 'circuits',
  title: 'The month of each circuit',
  oneRow: 'one circuit over the month',
  rows: (scope) => scope.signals.circuits.map((circuit) => circuitMonth(circuit, scope)),
  columns: [
    circuitColumn((row) => row.signals.circuit.id),
    {
      name: 'setPoint',
      unit: 'site temperature',
      definition: 'Usual set point of the month. Empty where none is known.',
      formula: 'median over the days of the daily median set point',
      decimals: 3,
      cell: (row, scope) => temperatureCell(row.setPoint, scope),
    },
    {
      name: 'median',
      unit: 'site temperature',
      definition: 'Middle of the settled air of all usable probes together.',
      formula: 'quantile 0.5 (type 7) of the settled readings of all usable probes',
      decimals: 3,
      cell: (row, scope) => temperatureCell(row.median, scope),
    },
    {
      name: 'spread',
      unit: 'site temperature difference',
      definition: 'How far the usable probes stand apart over the month.',
      formula: 'largest − smallest of the medians (type 7) of the settled air of the usable probes',
      decimals: 3,
      cell: (row, scope) => differenceCell(row.spread, scope),
    },
    {
      name: 'duty',
      unit: '1',
      definition:
        'Share of settled time in which the valve feeds. Near 1 there is no reserve. Empty without a valve column.',
      formula: 'Σ opening[i] ÷ number of settled readings with the valve known',
      decimals: 4,
      cell: (row) => row.duty,
    },
    {
      name: 'valveStartsPerHour',
      unit: '1/h',
      definition: 'Openings of an on/off valve in an hour of settled time. Empty for other valves.',
      formula: 'changes from shut to open at settled readings ÷ settled hours with the valve known',
      decimals: 3,
      cell: (row) => row.valveStartsPerHour,
    },
    {
      name: 'defrosts',
      unit: 'count',
      definition: 'Defrosts that began in the month.',
      formula: 'number of defrost windows with start in the month',
      cell: (row) => row.defrosts,
    },
    {
      name: 'defrostsMissed',
      unit: 'count',
      definition: 'Defrosts that were due at a usual time, the record being complete, and did not come.',
      formula: 'Σ over the usual times of day of the missed days of the month',
      cell: (row) => row.defrostsMissed,
    },
    {
      name: 'recoveryMedianMinutes',
      unit: 'min',
      definition: 'Usual recovery; a probe that did not come back counts with the time it was watched.',
      formula:
        'quantile 0.5 (type 7) over complete defrosts and usable probes of recoveryMinutes, else watchedMinutes',
      decimals: 2,
      cell: (row) => row.recoveryMinutes,
    },
    {
      name: 'aboveLimitMinutes',
      unit: 'min',
      definition:
        'Settled time in which at least one usable probe stood above the limit. Air, not food. Empty without a limit.',
      formula: 'number of settled readings with max over usable probes > limit × logging step',
      decimals: 2,
      cell: (row) => row.aboveLimitMinutes,
    },
    {
      name: 'coverage',
      unit: '1',
      definition: 'Share of the readings of its air probes that are there.',
      formula: 'known readings of all probes × logging step ÷ (probes × hours of the covered days × 60)',
      decimals: 4,
      cell: (row) => row.coverage,
    },
    {
      name: 'name',
      unit: '',
      definition: 'Name of the line-up.',
      formula: 'site file',
      cell: (row) => row.signals.circuit.name,
    },
    {
      name: 'limit',
      unit: 'site temperature',
      definition: 'The limit that aboveLimitMinutes is counted against, as in probes.csv.',
      formula: 'airLimit(circuit, group, median set point)',
      decimals: 3,
      cell: (row, scope) => temperatureCell(row.limit, scope),
    },
    {
      name: 'defrostsExpected',
      unit: 'count',
      definition: 'Defrosts that were due at the usual times on days with a complete record.',
      formula: 'Σ over the usual times of day of the days watched, over the whole export',
      cell: (row) => row.defrostsExpected,
    },
    {
      name: 'notRecovered',
      unit: 'count',
      definition: 'Probe and defrost pairs without a recovery before the next defrost, a gap or the end.',
      formula: 'number of empty recoveryMinutes over complete defrosts and usable probes',
      cell: (row) => row.notRecovered,
    },
  ],
});

function circuitMonth(signals: CircuitSignals, scope: MonthScope): CircuitMonth {
  const { range, days } = scope.month;
  const { circuit, usable, log } = signals;
  const step = stepMinutes(log.grid);
  const settled = airView(scope).settled.get(signals)!;
  const medians = settled.probes.filter((_, k) => usable[k]).map(({ median }) => median);
  const limit = limitOf(signals)?.value ?? Number.NaN;
  const valve = valveMonth(signals, scope.month);
  const windows = signals.defrosts.filter(({ from }) => from >= range.from && from < range.to);
  const recoveries = windows
    .filter(({ complete }) => complete)
    .flatMap((window) => window.probes.filter((_, k) => usable[k]));
  const known = signals.facts.reduce((sum, facts) => sum + readingsIn(facts, range), 0);
  const hours = days.reduce((sum, d) => sum + log.calendar.days[d]!.hours, 0);
  return {
    signals,
    setPoint: median(days.map((d) => signals.setPoint[d]!)),
    median: settled.median,
    spread: medians.length > 1 ? Math.max(...medians) - Math.min(...medians) : Number.NaN,
    duty: valve.duty,
    valveStartsPerHour: valve.startsPerHour,
    defrosts: windows.length,
    defrostsMissed: signals.slots.reduce(
      (sum, { missed }) => sum + missed.filter((at) => at >= range.from && at < range.to).length,
      0,
    ),
    defrostsExpected: signals.slots.reduce((sum, { expected }) => sum + expected, 0),
    recoveryMinutes: median(recoveries.map((one) => one.recoveryMinutes ?? one.watchedMinutes)),
    notRecovered: recoveries.filter(({ recoveryMinutes }) => recoveryMinutes === null).length,
    aboveLimitMinutes: Number.isNaN(limit) ? null : anyAbove(signals, limit, scope.month) * step,
    coverage: (known * step) / (circuit.probes.length * hours * 60),
    limit,
  };
}

function anyAbove({ circuit, phase, usable, log }: CircuitSignals, limit: number, { days }: Month): number {
  const chosen = circuit.probes.filter((_, k) => usable[k]).map(({ record }) => record.values);
  return days.reduce((sum, d) => sum + anyAboveIn(log.calendar.days[d]!, chosen, phase, limit), 0);
}

function anyAboveIn(
  { from, to }: SampleRange,
  probes: readonly Float64Array[],
  phase: Uint8Array,
  limit: number,
): number {
  let above = 0;
  for (let i = from; i < to; i++) {
    if (phase[i] !== Phase.cooling) continue;
    for (const values of probes) {
      if (values[i]! > limit) {
        above++;
        break;
      }
    }
  }
  return above;
}
