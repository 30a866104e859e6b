import { limitOf } from '../../exposure/circuit-exposure.ts';
import { stepMinutes } from '../../model/grid.ts';
import type { Celsius } from '../../units/quantities.ts';
import { airView } from '../air-view.ts';
import { differenceCell, monthDays, temperatureCell } from '../scope.ts';
import { readingsIn } from '../settled-air.ts';
import { defineTable } from '../table.ts';
import { circuitColumn, dayColumn, probeColumn } from './key-columns.ts';

interface ProbeDay {
  readonly day: string;
  readonly circuit: string;
  readonly probe: string;
  readonly median: Celsius;
  readonly p10: Celsius;
  readonly p90: Celsius;
  readonly aboveLimitMinutes: number | null;
  readonly coverage: number;
  readonly settledMinutes: number;
  readonly limit: Celsius;
  readonly offset: number;
}

export const probesTable = defineTable<ProbeDay>({
  name: 'probes',
  title: 'Air of each probe, day by day',
  oneRow: 'one air probe on one local day',
  *rows(scope) {
    const step = stepMinutes(scope.log.grid);
    const { settled } = airView(scope);
    const limits = scope.signals.circuits.map((circuit) => limitOf(circuit)?.value ?? Number.NaN);
    for (const [at, { d, day }] of monthDays(scope).entries()) {
      for (const [c, circuit] of scope.signals.circuits.entries()) {
        const { probes } = settled.get(circuit)!;
        const limit = limits[c]!;
        for (const [k, { point }] of circuit.circuit.probes.entries()) {
          const { readings, above, p10, median, p90 } = probes[k]!.days[at]!;
          yield {
            day: day.date,
            circuit: circuit.circuit.id,
            probe: point,
            median,
            p10,
            p90,
            aboveLimitMinutes: Number.isNaN(limit) ? null : above * step,
            coverage: (readingsIn(circuit.facts[k]!, day) * step) / (day.hours * 60),
            settledMinutes: readings * step,
            limit,
            offset: circuit.level[d]!,
          };
        }
      }
    }
  },
  columns: [
    dayColumn((row) => row.day),
    circuitColumn((row) => row.circuit),
    probeColumn((row) => row.probe),
    {
      name: 'median',
      unit: 'site temperature',
      definition: 'Middle of the settled air of the day: defrosts, recoveries and stops left out.',
      formula: 'quantile 0.5 (type 7) of the readings x[i] with phase[i] = cooling',
      decimals: 3,
      cell: (row, scope) => temperatureCell(row.median, scope),
    },
    {
      name: 'p10',
      unit: 'site temperature',
      definition: 'One tenth of the settled air of the day was at or below this.',
      formula: 'quantile 0.1 (type 7) of the same readings',
      decimals: 3,
      cell: (row, scope) => temperatureCell(row.p10, scope),
    },
    {
      name: 'p90',
      unit: 'site temperature',
      definition: 'Nine tenths of the settled air of the day were at or below this.',
      formula: 'quantile 0.9 (type 7) of the same readings',
      decimals: 3,
      cell: (row, scope) => temperatureCell(row.p90, scope),
    },
    {
      name: 'aboveLimitMinutes',
      unit: 'min',
      definition:
        'Settled air above the limit of the circuit (column limit). Air at the probe, not food. Empty without a limit.',
      formula: 'number of settled readings with x[i] > limit × logging step',
      decimals: 2,
      cell: (row) => row.aboveLimitMinutes,
    },
    {
      name: 'coverage',
      unit: '1',
      definition: 'Share of the local day for which the probe has a reading, in whatever phase.',
      formula: 'known readings × logging step ÷ (hours of the day × 60)',
      decimals: 4,
      cell: (row) => row.coverage,
    },
    {
      name: 'settledMinutes',
      unit: 'min',
      definition: 'How much settled air the row rests on.',
      formula: 'number of settled readings × logging step',
      decimals: 2,
      cell: (row) => row.settledMinutes,
    },
    {
      name: 'limit',
      unit: 'site temperature',
      definition:
        'What the air is held against: the alarm limit of the site file; else 41 °F (FDA Food Code 3-501.16(A)(2), a limit for food) where the set point lies below it; else set point and 8 °F, frozen 10 °F (common practice).',
      formula: 'airLimit(circuit, group, median set point)',
      decimals: 3,
      cell: (row, scope) => temperatureCell(row.limit, scope),
    },
    {
      name: 'circuitLevel',
      unit: 'site temperature difference',
      definition: "How far the mean of the circuit's probes stood over its set point that day.",
      formula: 'median in settled air of (mean of usable probes − set point)',
      decimals: 3,
      cell: (row, scope) => differenceCell(row.offset, scope),
    },
  ],
});
