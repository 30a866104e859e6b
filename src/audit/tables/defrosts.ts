import { stepMinutes } from '../../model/grid.ts';
import type { CircuitSignals, DefrostWindow, ProbeDefrost } from '../../signals/types.ts';
import { temperatureCell, timeCell } from '../scope.ts';
import { defineTable } from '../table.ts';
import { circuitColumn, probeColumn } from './key-columns.ts';

interface DefrostOfProbe {
  readonly signals: CircuitSignals;
  readonly window: DefrostWindow;
  readonly probe: string;
  readonly measured: ProbeDefrost;
}

export const defrostsTable = defineTable<DefrostOfProbe>({
  name: 'defrosts',
  title: 'Every defrost at every probe',
  oneRow: 'one air probe in one defrost that began in the month',
  *rows({ signals, month }) {
    for (const circuit of signals.circuits) {
      for (const window of circuit.defrosts) {
        if (window.from < month.range.from || window.from >= month.range.to) continue;
        for (const [k, measured] of window.probes.entries())
          yield { signals: circuit, window, probe: circuit.circuit.probes[k]!.point, measured };
      }
    }
  },
  columns: [
    circuitColumn((row) => row.signals.circuit.id),
    {
      name: 'start',
      unit: 'local time',
      definition: 'First reading in the defrost, RFC 3339 with the offset of the site.',
      formula: 'time of the first sample of the window',
      cell: (row, scope) => timeCell(row.window.from, scope),
    },
    {
      name: 'end',
      unit: 'local time',
      definition: 'First reading after the defrost.',
      formula: 'time of the first sample behind the window',
      cell: (row, scope) => timeCell(row.window.to, scope),
    },
    {
      name: 'source',
      unit: '',
      definition:
        'How the defrost is known: a logged status, the schedule of the site file, or the shape of the air temperatures.',
      formula: 'status where one is logged, else schedule, else shape',
      cell: (row) => row.window.source,
    },
    probeColumn((row) => row.probe),
    {
      name: 'peak',
      unit: 'site temperature',
      definition: 'Warmest reading of the probe in the defrost and the ten minutes after it.',
      formula: 'max x[i], start ≤ i < end + 10 min, not beyond the next defrost',
      decimals: 3,
      cell: (row, scope) => temperatureCell(row.measured.peak, scope),
    },
    {
      name: 'recoveryMinutes',
      unit: 'min',
      definition:
        'From the end of the defrost until the air at the probe was back at its own level. Empty: not before the next defrost, a gap or the end of the record.',
      formula:
        'first i ≥ end at which the mean of the last 10 min ≤ the level that the probe has to come back to (docs/methods/defrost-recovery.md)',
      decimals: 2,
      cell: (row) => row.measured.recoveryMinutes,
    },
    {
      name: 'recovered',
      unit: '',
      definition: 'Whether it came back before the next defrost, a gap or the end of the record.',
      formula: 'recoveryMinutes is known',
      cell: (row) => row.measured.recoveryMinutes !== null,
    },
    {
      name: 'watchedMinutes',
      unit: 'min',
      definition: 'How long the probe was watched for its recovery.',
      formula: 'recoveryMinutes, else minutes from the end until the next defrost, gap or end of the record',
      decimals: 2,
      cell: (row) => row.measured.watchedMinutes,
    },
    {
      name: 'minutes',
      unit: 'min',
      definition: 'Length of the defrost.',
      formula: '(end − start)',
      decimals: 2,
      cell: (row, { log }) => (row.window.to - row.window.from) * stepMinutes(log.grid),
    },
    {
      name: 'before',
      unit: 'site temperature',
      definition: 'Settled air of the probe in the hour before.',
      formula: 'median of the settled readings of the 60 min before start',
      decimals: 3,
      cell: (row, scope) => temperatureCell(row.measured.before, scope),
    },
    {
      name: 'meltMinutes',
      unit: 'min',
      definition:
        'How long the reading stood at the melting point of ice during the defrost. Frost that melts holds the air there; a longer stand than usual on this probe is more frost.',
      formula: 'samples with |x[i]| ≤ 0.6 °C, start ≤ i < end, times the logging interval',
      decimals: 2,
      cell: (row) => row.measured.plateauMinutes,
    },
    {
      name: 'complete',
      unit: '',
      definition:
        'False where the defrost touches a gap or an end of the record, so that start, end or peak may be cut.',
      formula: 'every sample from just before start to end is known',
      cell: (row) => row.window.complete,
    },
  ],
});
