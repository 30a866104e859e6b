import type { Lead } from '../../alarm-replay/lead.ts';
import type { Finding } from '../../model/finding.ts';
import { localTimestamp } from '../../units/display.ts';
import { alarmView, type ReplayedAlarm } from '../alarm-view.ts';
import { defineTable } from '../table.ts';

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
    {
      name: 'circuit',
      unit: '',
      definition: 'Circuit.',
      formula: 'finding',
      cell: (row) => row.finding.circuit,
    },
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
        'From the onset to the trip: negative where the alarm was first. For never: the days that passed without it.',
      formula: '(trip − onset) ÷ 24 h',
      decimals: 2,
      cell: (row) => row.lead.days,
    },
  ],
});
