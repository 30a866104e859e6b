import type { ImportIssue } from '../../model/import-report.ts';
import type { ReadingColumn, Readings } from '../readings.ts';
import { fileFamilies } from './file-families.ts';
import { groupedBy } from './grouped-by.ts';
import { JoinedTimes, joinColumns } from './join-columns.ts';
import { oneUnit } from './one-unit.ts';
import { headerOf, type Point } from './point.ts';

export interface CollectedPoints {
  readonly points: readonly Point[];
  readonly issues: readonly ImportIssue[];
}

/**
 * One entry a point of the site. Columns of the same header are one point where their files continue or
 * repeat each other, and several points, told apart by the stem of the file, where they contradict.
 */
export function collectPoints(readings: Readings): CollectedPoints {
  const issues: ImportIssue[] = [];
  const byHeader = new Map<string, readonly ReadingColumn[]>();
  for (const [header, columns] of groupedBy(readings.columns, headerOf)) {
    const { inOneUnit, issue } = oneUnit(columns, header);
    byHeader.set(header, inOneUnit);
    if (issue !== null) issues.push(issue);
  }
  const shared = [...byHeader.values()].filter((columns) => columns.length > 1);
  const familyOf = fileFamilies(shared);
  const joinedTimes = new JoinedTimes();
  const points: Point[] = [];
  for (const [header, columns] of byHeader) {
    const families = groupedBy(columns, (column) => familyOf(column.fileStem));
    for (const members of families.values()) {
      const name = families.size === 1 ? header : `${members[0]!.fileStem}:${header}`;
      const { point, conflicts } = joinColumns(members, name, header, joinedTimes);
      points.push(point);
      if (conflicts > 0) issues.push(conflictIssue(point, conflicts));
    }
  }
  points.sort((a, b) => a.order - b.order);
  const joined = points.filter((point) => point.fileStems.length > 1);
  if (joined.length > 0) issues.unshift(joinedIssue(joined));
  return { points, issues };
}

function joinedIssue(joined: readonly Point[]): ImportIssue {
  const files = [...new Set(joined.flatMap((point) => point.fileStems))];
  return {
    code: 'files-joined',
    line: null,
    column: null,
    count: joined.length,
    message: `${joined.length} points stand in several files (${files.slice(0, 4).join(', ')}${files.length > 4 ? ', …' : ''}) and were joined by time. If they are different points, name them FILE-STEM:HEADER in a site file.`,
    examples: joined.slice(0, 3).map((point) => point.name),
  };
}

function conflictIssue(point: Point, conflicts: number): ImportIssue {
  return {
    code: 'files-conflict',
    line: null,
    column: point.name,
    count: conflicts,
    message: `${point.name}: ${conflicts} readings stand in two files with different values for the same time (${point.fileStems.join(', ')}). The later file was believed; leave one of the files out to change that.`,
  };
}
