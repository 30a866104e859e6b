import { timeAt } from '../../model/grid.ts';
import { localTimestamp } from '../../units/display.ts';
import type { Celsius, EpochMs } from '../../units/quantities.ts';
import { findingsIn, temperatureCell, touches } from '../scope.ts';
import { defineTable } from '../table.ts';
import { circuitColumn } from './key-columns.ts';

interface Change {
  readonly circuit: string | null;
  readonly what: 'set point' | 'shut off' | 'override' | 'set point left changed';
  readonly at: EpochMs;
  readonly end: EpochMs | null;
  readonly from: Celsius;
  readonly to: Celsius;
  readonly source: string;
}

const leftOffWords: Readonly<{ [shape: string]: Change['what'] }> = {
  'override-on': 'override',
  'override-was-on': 'override',
  'set-point-left': 'set point left changed',
};

/** Set points that moved, circuits that were shut off, valves that were held open, in the order of time. */
export const changesTable = defineTable<Change>({
  name: 'changes',
  title: 'Set-point changes, stops and overrides',
  oneRow: 'one change',
  rows: (scope) => {
    const { signals, log } = scope;
    const steps = signals.circuits.flatMap(({ circuit, setPointSteps }) =>
      setPointSteps
        .filter(({ at }) => touches(scope, at, at + 1))
        .map(
          ({ at, from, to, source }): Change => ({
            circuit: circuit.id,
            what: 'set point',
            at: timeAt(log.grid, at),
            end: null,
            from,
            to,
            source: source === 'column' ? 'logged set point' : 'all probes moved by one step',
          }),
        ),
    );
    const stops = signals.circuits.flatMap(({ circuit, offSpells }) =>
      offSpells
        .filter(({ from, to }) => touches(scope, from, to))
        .map(
          ({ from, to }): Change => ({
            circuit: circuit.id,
            what: 'shut off',
            at: timeAt(log.grid, from),
            end: to >= log.grid.count ? null : timeAt(log.grid, to),
            from: Number.NaN,
            to: Number.NaN,
            source:
              circuit.valve === null ? 'air far over its usual level' : 'valve shut while the air climbs',
          }),
        ),
    );
    const overrides = findingsIn(scope).flatMap(({ kind, circuit, onset, end, evidence }) => {
      const what = kind === 'left-off' ? leftOffWords[evidence[0]?.shape ?? ''] : undefined;
      if (what === undefined) return [];
      return [
        { circuit, what, at: onset, end, from: Number.NaN, to: Number.NaN, source: 'finding left-off' },
      ];
    });
    return [...steps, ...stops, ...overrides].sort((a, b) => a.at - b.at || compare(a.circuit, b.circuit));
  },
  columns: [
    circuitColumn((row) => row.circuit),
    {
      name: 'what',
      unit: '',
      definition: 'What was changed: the set point, or the circuit was shut off, or its valve held open.',
      formula: 'docs/methods/left-off.md; set-point steps of the signals',
      cell: (row) => row.what,
    },
    {
      name: 'at',
      unit: 'local time',
      definition: 'When.',
      formula: 'first sample of the change',
      cell: (row, { log }) => localTimestamp(row.at, log),
    },
    {
      name: 'end',
      unit: 'local time',
      definition: 'When it went back, for stops and overrides; empty: still so at the end, or a set point.',
      formula: 'first sample after it',
      cell: (row, { log }) => (row.end === null ? null : localTimestamp(row.end, log)),
    },
    {
      name: 'from',
      unit: 'site temperature',
      definition: 'Set point before.',
      formula: 'logged value, or the level of the probes',
      decimals: 2,
      cell: (row, scope) => temperatureCell(row.from, scope),
    },
    {
      name: 'to',
      unit: 'site temperature',
      definition: 'Set point after.',
      formula: 'logged value, or the level of the probes',
      decimals: 2,
      cell: (row, scope) => temperatureCell(row.to, scope),
    },
    {
      name: 'knownFrom',
      unit: '',
      definition: 'What the change is known by.',
      formula: '',
      cell: (row) => row.source,
    },
  ],
});

function compare(a: string | null, b: string | null): number {
  return (a ?? '') < (b ?? '') ? -1 : 1;
}
