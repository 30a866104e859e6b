import type { SampleRange } from '../../exposure/exposure.ts';
import { knownCount } from '../../maths/known-count.ts';
import { stepMinutes } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { Record } from '../../model/record.ts';
import { timeCell } from '../scope.ts';
import { defineTable } from '../table.ts';

interface Point {
  readonly record: Record;
  readonly place: string;
  readonly known: number;
  readonly gap: SampleRange;
  readonly values: number;
}

/** Every point of the log with the place that it belongs to, each once. */
function placedRecords(log: Log): { readonly record: Record; readonly place: string }[] {
  const isRecord = (target: unknown): target is Record => typeof target === 'object' && target !== null;
  const circuits = log.circuits.flatMap((circuit) =>
    [
      ...circuit.probes.map(({ record }) => record),
      ...[circuit.setPoint, circuit.valve, circuit.superheat, circuit.defrost.status].filter(isRecord),
      ...[...circuit.returnAir, ...circuit.coilOut, ...circuit.product, ...circuit.defrostTermination],
    ].map((record) => ({ record, place: circuit.id })),
  );
  const groups = log.suctionGroups.flatMap((group) =>
    [
      ...[group.pressure, group.pressureSetPoint, group.discharge, group.liquidLevel].filter(isRecord),
      ...group.compressors,
      ...Object.values(group.others),
    ].map((record) => ({ record, place: group.id })),
  );
  const all = [...circuits, ...groups, ...log.unassigned.map((record) => ({ record, place: '' }))];
  const seen = new Set<string>();
  return all.filter(({ record }) => !seen.has(record.point) && seen.add(record.point));
}

function longestGap(values: Float64Array, { from, to }: SampleRange): SampleRange {
  let longest = { from, to: from };
  let start = -1;
  for (let i = from; i <= to; i++) {
    const isMissing = i < to && Number.isNaN(values[i]!);
    if (isMissing && start < 0) start = i;
    if (isMissing || start < 0) continue;
    if (i - start > longest.to - longest.from) longest = { from: start, to: i };
    start = -1;
  }
  return longest;
}

export const pointsTable = defineTable<Point>({
  name: 'points',
  title: 'What was logged',
  oneRow: 'one point of the export over the month',
  rows: ({ log, month }) =>
    placedRecords(log).map(({ record, place }) => {
      const { from, to } = month.range;
      const known = knownCount(record.values, from, to);
      const gap = known === to - from ? { from, to: from } : longestGap(record.values, month.range);
      return { record, place, known, gap, values: to - from };
    }),
  columns: [
    {
      name: 'point',
      unit: '',
      definition: 'Column of the export.',
      formula: '',
      cell: (row) => row.record.point,
    },
    {
      name: 'belongsTo',
      unit: '',
      definition: 'Circuit or suction group; empty where none uses it.',
      formula: 'site file',
      cell: (row) => row.place,
    },
    {
      name: 'quantity',
      unit: '',
      definition: 'What it measures.',
      formula: 'unit, name and behaviour',
      cell: (row) => row.record.quantity,
    },
    {
      name: 'coverage',
      unit: '1',
      definition: 'Share of the readings that are there.',
      formula: 'known readings ÷ logging steps of the covered days',
      decimals: 4,
      cell: (row) => row.known / row.values,
    },
    {
      name: 'longestGapMinutes',
      unit: 'min',
      definition: 'Longest stretch without a reading.',
      formula: 'longest run of missing readings × logging step',
      decimals: 2,
      cell: (row, { log }) => (row.gap.to - row.gap.from) * stepMinutes(log.grid),
    },
    {
      name: 'longestGapStart',
      unit: 'local time',
      definition: 'When it began.',
      formula: 'time of its first missing reading',
      cell: (row, scope) => (row.gap.to > row.gap.from ? timeCell(row.gap.from, scope) : null),
    },
    {
      name: 'interval',
      unit: 'min',
      definition: 'Usual time between readings.',
      formula: 'intervalMs of the record',
      decimals: 2,
      cell: (row) => row.record.intervalMs / 60_000,
    },
    {
      name: 'logging',
      unit: '',
      definition: 'Sampled, or written only when the value changes.',
      formula: '',
      cell: (row) => row.record.logging,
    },
  ],
});
