import type { CircuitSignals } from '../../signals/types.ts';
import { alarmView, type ReplayedAlarm } from '../alarm-view.ts';
import { temperatureCell, timeCell, touches } from '../scope.ts';
import { defineTable } from '../table.ts';
import { circuitColumn } from './key-columns.ts';

interface AlarmRow {
  readonly signals: CircuitSignals;
  readonly alarm: ReplayedAlarm;
}

export const alarmsTable = defineTable<AlarmRow>({
  name: 'alarms',
  title: 'What each alarm would have done',
  oneRow:
    'one alarm on one circuit: the one in force, the same on the warmest probe, and one suggested for each probe',
  rows: (scope) =>
    alarmView(scope).flatMap(({ circuit, alarms }) => alarms.map((alarm) => ({ signals: circuit, alarm }))),
  columns: [
    circuitColumn((row) => row.signals.circuit.id),
    {
      name: 'alarm',
      unit: '',
      definition:
        'in force: limits of the site file; common practice: 44 °F or 8 °F over the set point (frozen 10 °F) for 60 min where the site file gives none; suggested: from the quiet days of the probe.',
      formula: 'docs/methods/alarm-replay.md',
      cell: (row) => row.alarm.name,
    },
    {
      name: 'listensTo',
      unit: '',
      definition: 'The average or the warmest of the usable probes, or one probe.',
      formula: 'controls of the circuit (in force), else as named',
      cell: ({ alarm: { history } }) =>
        typeof history.rule.input === 'string' ? history.rule.input : history.rule.input.probe,
    },
    {
      name: 'limit',
      unit: 'site temperature',
      definition: 'It comes when its input stands above this for the delay.',
      formula: 'site file, common practice, or the suggestion',
      decimals: 3,
      cell: (row, scope) => temperatureCell(row.alarm.history.rule.limit, scope),
    },
    {
      name: 'delayMinutes',
      unit: 'min',
      definition: 'Delay.',
      formula: 'as limit',
      cell: (row) => row.alarm.history.rule.delayMinutes,
    },
    {
      name: 'lockOutAfterMinutes',
      unit: 'min',
      definition: 'It does not listen in a defrost and for so long after.',
      formula: '30, common practice',
      cell: (row) => row.alarm.history.rule.lockOutAfterMinutes,
    },
    {
      name: 'trips',
      unit: 'count',
      definition: 'How often it came in the month.',
      formula: 'trips of the replay over the whole export that touch the month',
      cell: (row, scope) =>
        row.alarm.history.trips.filter(({ from, to }) => touches(scope, from, to ?? scope.log.grid.count))
          .length,
    },
    {
      name: 'firstTrip',
      unit: 'local time',
      definition: 'When it first came in the export.',
      formula: 'time of the first trip',
      cell: (row, scope) =>
        row.alarm.history.trips[0] === undefined ? null : timeCell(row.alarm.history.trips[0].from, scope),
    },
    {
      name: 'blindMinutesADay',
      unit: 'min/d',
      definition: 'Time a day in which it could not have come: locked out, or its input unknown.',
      formula: 'blind readings ÷ all readings × 1440',
      decimals: 1,
      cell: (row) => row.alarm.history.blindMinutesADay,
    },
    {
      name: 'quietDays',
      unit: 'count',
      definition: 'Days without a finding that a suggested limit is learnt from.',
      formula: 'docs/methods/norms.md',
      cell: (row) => row.alarm.suggestion?.quietDays ?? null,
    },
    {
      name: 'nuisanceAMonth',
      unit: '1/month',
      definition: 'Nuisance days to be expected of a suggested limit in 30 quiet days.',
      formula: '30 × quiet days on which it would have come ÷ quiet days',
      decimals: 2,
      cell: (row) => row.alarm.suggestion?.aMonth.expected ?? null,
    },
    {
      name: 'nuisanceAMonthAtMost',
      unit: '1/month',
      definition: 'Upper end of the 95 % interval of that rate.',
      formula: 'exact Poisson limit (Garwood 1936) × 30 ÷ quiet days',
      decimals: 2,
      cell: (row) => row.alarm.suggestion?.aMonth.high ?? null,
    },
  ],
});
