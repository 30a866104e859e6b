import type { Finding } from '../../model/finding.ts';
import type { Log } from '../../model/log.ts';
import { dayText, endOf } from '../local-time.ts';
import type { Highlight } from './chart.ts';

/** Null where the finding does not touch the chart, or fills it. */
export function highlightOf(finding: Finding, log: Log, from: number, to: number): Highlight | null {
  const end = finding.end ?? endOf(log);
  if (finding.onset > to || end < from) return null;
  if (finding.onset < from && end >= to) return null;
  return {
    severity: finding.severity,
    from: Math.max(from, finding.onset),
    to: Math.min(to, end),
    label: finding.onset < from ? null : `since ${dayText(log, finding.onset)}`,
  };
}

const hour = 3_600_000;

/**
 * A day, or six hours where something cycles too fast: the last ones while it is still so, else those around the
 * onset. What was left off is worth seeing at the moment it went off.
 */
export function closeUpWindow(finding: Finding, log: Log): { readonly from: number; readonly to: number } {
  const length = (finding.kind === 'short-cycling' ? 6 : 24) * hour;
  const end = endOf(log);
  const stillSo = finding.end === null || finding.end >= end - length;
  const atOnset = finding.kind === 'left-off' || !stillSo;
  const to = atOnset ? Math.min(end, finding.onset + 0.75 * length) : end;
  return { from: Math.max(log.grid.startMs, to - length), to };
}
