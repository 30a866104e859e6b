import type { Lead } from '../../alarm-replay/lead.ts';
import type { Finding } from '../../model/finding.ts';
import { localTimestamp } from '../../units/display.ts';
import { alarmView, type ReplayedAlarm } from '../alarm-view.ts';
import { defineTable } from '../table.ts';
import { toldOn } from '../told-on.ts';
import { circuitColumn } from './key-columns.ts';

interface LeadRow {
  readonly finding: Finding;
  readonly alarm: ReplayedAlarm;
  readonly lead: Lead;
}

export const alarmLeadsTable = defineTable<LeadRow>({
  name: 'alarm-leads',
  title: 'Each alarm against each finding',
  oneRow: 'one alarm and one finding of a warm circuit, watch or act',
  rows: (scope) =>
    alarmView(scope).flatMap(({ findings }) =>
      findings.flatMap(({ finding, leads }) => leads.map(({ alarm, lead }) => ({ finding, alarm, lead }))),
    ),
  columns: [
    circuitColumn((row) => row.finding.circuit),
    {
      name: 'finding',
      unit: '',
      definition: 'Id of the finding.',
      formula: 'finding',
      cell: (row) => row.finding.id,
    },
    {
      name: 'kind',
      unit: '',
      definition: 'Kind of the finding.',
      formula: 'finding',
      cell: (row) => row.finding.kind,
    },
    {
      name: 'alarm',
      unit: '',
      definition: 'The alarm, as in alarms.csv.',
      formula: 'alarms.csv',
      cell: (row) => row.alarm.name,
    },
    {
      name: 'listensTo',
      unit: '',
      definition: 'What it listens to.',
      formula: 'alarms.csv',
      cell: ({ alarm: { history } }) =>
        typeof history.rule.input === 'string' ? history.rule.input : history.rule.input.probe,
    },
    {
      name: 'onset',
      unit: 'local time',
      definition: 'Onset of the finding, seen with hindsight.',
      formula: 'finding',
      cell: (row, { log }) => localTimestamp(row.finding.onset, log),
    },
    {
      name: 'trip',
      unit: 'local time',
      definition: 'First trip that has to do with the finding; empty: none.',
      formula: 'first trip that was not over three days before the onset',
      cell: (row, { log }) => (row.lead.trip === null ? null : localTimestamp(row.lead.trip, log)),
    },
    {
      name: 'order',
      unit: '',
      definition: 'alarm-first, alarm-later or never.',
      formula: 'sign of days',
      cell: (row) => row.lead.order,
    },
    {
      name: 'days',
      unit: 'd',
      definition:
        'From the onset, seen with hindsight, to the trip: negative where the alarm was first. For never: the days that passed without it.',
      formula: '(trip − onset) ÷ 24 h',
      decimals: 2,
      cell: (row) => row.lead.days,
    },
    {
      name: 'toldAt',
      unit: 'local time',
      definition:
        'When the finding could first have been told: its own analysis gives it from the history up to then and nothing later. Empty: never by its own analysis alone.',
      formula:
        'first end of a local day at which the judgement of the cut history holds it at watch or act, found by halving',
      cell: (row, scope) => {
        const told = toldOn(row.finding, scope);
        return told === null ? null : localTimestamp(told, scope.log);
      },
    },
    {
      name: 'daysFromTold',
      unit: 'd',
      definition:
        'From when the finding could have been told to the trip: negative where the alarm was first. Empty without a trip.',
      formula: '(trip − toldAt) ÷ 24 h',
      decimals: 2,
      cell: (row, scope) => {
        const told = toldOn(row.finding, scope);
        return told === null || row.lead.trip === null ? null : (row.lead.trip - told) / 86_400_000;
      },
    },
  ],
});
