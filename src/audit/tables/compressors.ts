import { type LocalDay, stepMinutes } from '../../model/grid.ts';
import { type RunDay, runDays } from '../../signals/run-days.ts';
import { isStart } from '../../signals/spells.ts';
import type { Spells } from '../../signals/types.ts';
import { monthDays } from '../scope.ts';
import { defineTable } from '../table.ts';
import { dayColumn, suctionGroupColumn } from './key-columns.ts';

interface CompressorDay {
  readonly day: string;
  readonly group: string;
  readonly point: string;
  readonly startsSeen: number;
  readonly runHours: number;
  readonly shortestRunMinutes: number;
  readonly shortestOffMinutes: number;
  readonly coverage: number;
  readonly uncountable: string | null;
}

/** Up to this interval every start is counted as the record has it (contract §3). */
const exactUpToMinutes = 1;

/** Why the starts of a day cannot be counted from readings this far apart, or null. */
function whyUncountable(
  { shortestRunMinutes, shortestOffMinutes }: RunDay,
  spells: Spells,
  day: LocalDay,
  intervalMinutes: number,
): string | null {
  if (intervalMinutes <= exactUpToMinutes) return null;
  const known = [shortestRunMinutes, shortestOffMinutes].filter((minutes) => !Number.isNaN(minutes));
  if (Math.min(...known) < 2 * intervalMinutes) {
    return `logged every ${intervalMinutes} min: some runs or stops filled a single reading, so others may have fallen between two`;
  }
  const isAtMidnight = spells.from.some(
    (from, k) => (from === day.from || from === day.to) && isStart(spells, k),
  );
  return isAtMidnight
    ? `logged every ${intervalMinutes} min: a start fell between the last reading of one day and the first of the next`
    : null;
}

export const compressorsTable = defineTable<CompressorDay>({
  name: 'compressors',
  title: 'Starts and running hours of each compressor',
  oneRow: 'one compressor on one local day',
  rows: (scope) => {
    const { log, signals } = scope;
    const interval = stepMinutes(log.grid);
    const machines = signals.groups.flatMap(({ group, compressorSpells }) =>
      group.compressors.map((record, k) => ({
        group: group.id,
        point: record.point,
        interval: Math.max(interval, record.logging === 'sampled' ? record.intervalMs / 60_000 : 0),
        spells: compressorSpells[k]!,
        days: runDays(compressorSpells[k]!, log.grid, log.calendar),
      })),
    );
    return monthDays(scope).flatMap(({ d, day }) =>
      machines.map(({ group, point, interval, spells, days }) => {
        const { starts, ...rest } = days[d]!;
        const uncountable = whyUncountable(days[d]!, spells, day, interval);
        return { day: day.date, group, point, startsSeen: starts, ...rest, uncountable };
      }),
    );
  },
  columns: [
    dayColumn((row) => row.day),
    suctionGroupColumn((row) => row.group),
    {
      name: 'point',
      unit: '',
      definition: 'Run status, current or power of the machine.',
      formula: 'site file',
      cell: (row) => row.point,
    },
    {
      name: 'starts',
      unit: 'count',
      definition:
        'Starts of the day. None is counted across a gap. Empty where the readings are too far apart to count them (column note says why).',
      formula: 'number of changes from standing to running between neighbouring known readings',
      cell: (row) => (row.uncountable === null && row.coverage > 0 ? row.startsSeen : null),
    },
    {
      name: 'runHours',
      unit: 'h',
      definition: 'Running time.',
      formula: 'running readings × logging step',
      decimals: 4,
      cell: (row) => (row.coverage > 0 ? row.runHours : null),
    },
    {
      name: 'shortestRunMinutes',
      unit: 'min',
      definition: 'Shortest run that began that day with its start and its stop in the record.',
      formula: 'min over whole running spells of readings × logging step',
      decimals: 2,
      cell: (row) => row.shortestRunMinutes,
    },
    {
      name: 'shortestOffMinutes',
      unit: 'min',
      definition: 'Shortest stop that began that day with both its ends in the record.',
      formula: 'min over whole standing spells of readings × logging step',
      decimals: 2,
      cell: (row) => row.shortestOffMinutes,
    },
    {
      name: 'coverage',
      unit: '1',
      definition: 'Share of the local day that is logged.',
      formula: 'known readings × logging step ÷ (hours of the day × 60)',
      decimals: 4,
      cell: (row) => row.coverage,
    },
    {
      name: 'startsSeen',
      unit: 'count',
      definition:
        'Changes from standing to running that the record shows, countable or not: there were at least so many.',
      formula: 'as starts',
      cell: (row) => row.startsSeen,
    },
    {
      name: 'note',
      unit: '',
      definition: 'Why the starts cannot be counted; empty where they can.',
      formula:
        'interval > 1 min, and the shortest run or stop < 2 intervals or a start at the first reading of a day',
      cell: (row) => row.uncountable,
    },
  ],
});
