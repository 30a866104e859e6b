import Table from 'cli-table3';
import type { Program, Usage } from './measure.ts';

/** Figures of programs on one input, and what the first one takes of each of the others. */
export function comparisonTable(programs: readonly Program[], usages: readonly Usage[]): string {
  const first = usages[0]!;
  const ratio = (mine: number, other: number): string => (mine / other).toFixed(2);
  const table = new Table({
    head: ['', 'wall s', 'CPU s', 'MB', 'wall ratio', 'CPU ratio', 'memory ratio'],
    style: { head: [], border: [] },
    colAligns: ['left', 'right', 'right', 'right', 'right', 'right', 'right'],
  });
  for (const [at, { name }] of programs.entries()) {
    const { wallSeconds, cpuSeconds, megabytes } = usages[at]!;
    table.push([
      name,
      wallSeconds.toFixed(2),
      cpuSeconds.toFixed(2),
      megabytes.toFixed(0),
      ratio(first.wallSeconds, wallSeconds),
      ratio(first.cpuSeconds, cpuSeconds),
      ratio(first.megabytes, megabytes),
    ]);
  }
  return table.toString();
}
