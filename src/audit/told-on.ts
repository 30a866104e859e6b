import { analyses } from '../analyses/registry.ts';
import { judge } from '../diagnosis/judge.ts';
import type { Finding, FindingKind } from '../model/finding.ts';
import { dayAt, indexAt, timeAt } from '../model/grid.ts';
import type { Signals } from '../signals/types.ts';
import type { EpochMs } from '../units/quantities.ts';
import { signalsUntil } from './cut-history.ts';
import type { MonthScope } from './scope.ts';

const computed = new WeakMap<MonthScope, Map<Finding, EpochMs | null>>();

/**
 * When a finding about a circuit could first have been told: the end of the first local day up to which its own
 * analysis, run on nothing but what was known then, gives it at watch or act. Looked for by halving the days from its
 * onset on, so that what was told once is taken to stay told. Null where its own analysis alone never gives it.
 * Made when it is first asked for, and kept for the audit.
 */
export function toldOn(finding: Finding, scope: MonthScope): EpochMs | null {
  const known = computed.get(scope) ?? new Map<Finding, EpochMs | null>();
  computed.set(scope, known);
  const kept = known.get(finding);
  if (kept !== undefined) return kept;
  const told = firstTold(finding, scope.signals);
  known.set(finding, told);
  return told;
}

function firstTold(finding: Finding, signals: Signals): EpochMs | null {
  const { grid, calendar } = signals.log;
  let last = calendar.days.length - 1;
  let first = dayAt(calendar, indexAt(grid, finding.onset));
  if (!isTold(finding, signals, last)) return null;
  while (first < last) {
    const middle = (first + last) >> 1;
    if (isTold(finding, signals, middle)) last = middle;
    else first = middle + 1;
  }
  return timeAt(grid, calendar.days[last]!.to);
}

/** Whether the history up to the end of this day gives the finding. */
export function isTold(finding: Finding, signals: Signals, lastDay: number): boolean {
  const then = signalsUntil(signals, lastDay);
  const own = then.circuits.find(({ circuit }) => circuit.id === finding.circuit);
  if (own === undefined) return false;
  const group = then.groups.find(({ members }) => members.includes(own.circuit.id)) ?? null;
  const evidence = analyses.flatMap((analysis) =>
    analysis.scope === 'circuit' && analysis.meta.id === analysisOf(finding.kind)
      ? analysis.analyse(own, group, then).evidence
      : [],
  );
  return judge(then, { evidence, abstentions: [] }).findings.some(
    ({ kind, circuit, probe, severity }) =>
      kind === finding.kind && circuit === finding.circuit && probe === finding.probe && severity !== 'note',
  );
}

function analysisOf(kind: FindingKind): string {
  return kind === 'defrost-missed' ? 'defrost-recovery' : kind;
}
