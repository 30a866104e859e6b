import {
  type CircuitExposure,
  circuitExposure,
  type ProbeExposure,
} from '../../exposure/circuit-exposure.ts';
import { lagMinutes } from '../../exposure/settings.ts';
import { differenceCell, temperatureCell, timeCell } from '../scope.ts';
import type { Column } from '../table.ts';
import { defineTable } from '../table.ts';
import { circuitColumn, probeColumn } from './key-columns.ts';

interface ProbeRow {
  readonly of: CircuitExposure;
  readonly probe: ProbeExposure;
}

const minutes = (
  name: string,
  definition: string,
  formula: string,
  value: (row: ProbeRow) => number | null,
): Column<ProbeRow> => ({ name, unit: 'min', definition, formula, decimals: 2, cell: value });

export const exposureTable = defineTable<ProbeRow>({
  name: 'exposure',
  title: 'Time and degree-hours of air above the limit',
  oneRow: 'one usable air probe of a circuit that has a limit, over the month',
  rows: ({ signals, month }) =>
    signals.circuits.flatMap((circuit) => {
      const of = circuitExposure(circuit, month.range);
      return of === null ? [] : of.probes.map((probe) => ({ of, probe }));
    }),
  columns: [
    circuitColumn((row) => row.of.circuit),
    probeColumn((row) => row.probe.point),
    {
      name: 'limit',
      unit: 'site temperature',
      definition:
        'What the air is held against: the alarm limit in force where the site file gives one. A limit for food held against air is a cue, no breach.',
      formula: 'airLimit(circuit, group, median set point)',
      decimals: 3,
      cell: (row, scope) => temperatureCell(row.of.limit.value, scope),
    },
    {
      name: 'limitFrom',
      unit: '',
      definition: 'Where the limit comes from.',
      formula: 'airLimit',
      cell: (row) => row.of.limit.cite,
    },
    minutes(
      'knownMinutes',
      'Time with a reading.',
      'known readings × logging step',
      (row) => row.probe.exposure.knownMinutes,
    ),
    minutes(
      'unknownMinutes',
      'Time without one: neither above nor below.',
      'missing readings × logging step',
      (row) => row.probe.exposure.unknownMinutes,
    ),
    minutes(
      'aboveMinutes',
      'Air above the limit, in whatever phase.',
      'number of readings with x[i] > limit × logging step',
      (row) => row.probe.exposure.aboveMinutes,
    ),
    minutes(
      'settledMinutes',
      'Of these, in settled air.',
      'those with phase[i] = cooling',
      (row) => row.probe.exposure.settledMinutes,
    ),
    minutes(
      'defrostMinutes',
      'Of these, in a defrost.',
      'those with phase[i] = defrost',
      (row) => row.probe.exposure.defrostMinutes,
    ),
    minutes(
      'recoveryMinutes',
      'Of these, in the recovery after a defrost or a stop.',
      'those with phase[i] = recovery',
      (row) => row.probe.exposure.recoveryMinutes,
    ),
    {
      name: 'degreeHours',
      unit: 'site temperature difference × h',
      definition: 'How far and how long together.',
      formula: 'Σ max(0, x[i] − limit) × logging step in hours',
      decimals: 3,
      cell: (row, scope) => differenceCell(row.probe.exposure.kelvinHours, scope),
    },
    minutes(
      'longestMinutes',
      'Longest unbroken episode above the limit; a missing reading ends one.',
      'longest run of readings with x[i] > limit × logging step',
      (row) => row.probe.exposure.longest?.minutes ?? null,
    ),
    {
      name: 'longestStart',
      unit: 'local time',
      definition: 'When that episode began.',
      formula: 'time of its first reading',
      cell: (row, scope) =>
        row.probe.exposure.longest === null ? null : timeCell(row.probe.exposure.longest.from, scope),
    },
    {
      name: 'coldHoldingLimit',
      unit: 'site temperature',
      definition:
        'The published cold-holding limit, 41 °F (FDA Food Code 2022, 3-501.16(A)(2)), beside the alarm limit. It is for food: air above it is a cue. Empty where it does not speak of the circuit: frozen, or a set point that is not under it.',
      formula: '5 °C where class is not low and the median set point < 5 °C',
      decimals: 3,
      cell: (row, scope) => temperatureCell(row.of.coldHolding?.value ?? Number.NaN, scope),
    },
    minutes(
      'coldHoldingAboveMinutes',
      'Air above the published cold-holding limit, in whatever phase.',
      'number of readings with x[i] > coldHoldingLimit × logging step',
      (row) => row.probe.coldHolding?.aboveMinutes ?? null,
    ),
    minutes(
      'coldHoldingSettledMinutes',
      'Of these, in settled air.',
      'those with phase[i] = cooling',
      (row) => row.probe.coldHolding?.settledMinutes ?? null,
    ),
    {
      name: 'coldHoldingDegreeHours',
      unit: 'site temperature difference × h',
      definition: 'How far above the published cold-holding limit, and how long, together.',
      formula: 'Σ max(0, x[i] − coldHoldingLimit) × logging step in hours',
      decimals: 3,
      cell: (row, scope) => differenceCell(row.probe.coldHolding?.kelvinHours ?? Number.NaN, scope),
    },
    minutes(
      'coldHoldingLongestMinutes',
      'Longest unbroken episode above the published cold-holding limit; a missing reading ends one.',
      'longest run of readings with x[i] > coldHoldingLimit × logging step',
      (row) => row.probe.coldHolding?.longest?.minutes ?? null,
    ),
    ...lagMinutes.flatMap((tau, k): Column<ProbeRow>[] => [
      minutes(
        `lag${tau}AboveMinutes`,
        `Time for which a body that follows the air with τ = ${tau} min would have stood above the limit. A picture, no measurement.`,
        `y = y + (1 − e^(−Δt/${tau})) (x − y), from the mean of the first hour; readings with y > limit × logging step, the first 3τ left out`,
        (row) => row.probe.lags[k]!.aboveMinutes,
      ),
      {
        name: `lag${tau}Peak`,
        unit: 'site temperature',
        definition: `The warmest that such a body would have become.`,
        formula: 'max y',
        decimals: 3,
        cell: (row, scope) => temperatureCell(row.probe.lags[k]!.peak, scope),
      },
    ]),
  ],
});
