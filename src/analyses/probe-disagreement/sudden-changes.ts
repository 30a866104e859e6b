import type { Evidence } from '../../model/evidence.ts';
import { dayAt, timeAt } from '../../model/grid.ts';
import type { CircuitSignals, GroupSignals } from '../../signals/types.ts';
import { type Acute, acuteChange } from './acute.ts';
import { behaviour } from './behaviour.ts';
import { changeEvidence } from './change-evidence.ts';
import type { OffsetTable } from './offset-table.ts';
import { plausibility } from './plausibility.ts';

/** The probe of the circuit that left its neighbours within the last hours, or nothing. */
export function suddenChanges(
  signals: CircuitSignals,
  table: OffsetTable,
  group: GroupSignals | null,
  living: readonly number[],
): (Evidence & { probe: string })[] {
  let loudest: { probe: number; peers: number[]; change: Acute } | null = null;
  for (const probe of living) {
    const peers = living.filter((other) => other !== probe);
    const change = acuteChange(table, probe, peers);
    if (change === null) continue;
    // Of two probes the warm one is written down, as in the votes.
    const size = living.length === 2 ? change.shift : Math.abs(change.shift);
    const other = loudest === null ? Number.NEGATIVE_INFINITY : size2(loudest.change, living.length);
    if (size > other) loudest = { probe, peers, change };
  }
  if (loudest === null) return [];
  const { probe, peers, change } = loudest;
  const { grid, calendar } = signals.log;
  const day = dayAt(calendar, change.from);
  const compared = { old: { from: 0, to: change.from }, now: { from: change.from, to: grid.count } };
  const evidence = changeEvidence(signals, probe, peers, {
    shape: 'step',
    onset: timeAt(grid, change.from),
    end: null,
    certainty: 0.8 * (1 - Math.exp(-Math.abs(change.shift) / 2)),
    shift: change.shift,
    error: 0.5,
    features: {
      votes: change.votes,
      probes: living.length,
      rampDays: 0,
      daysBefore: day,
      daysSince: (change.to - change.from) * (grid.stepMs / 86_400_000),
      acute: 1,
      ...behaviour(signals, table, probe, peers, compared),
      ...plausibility(signals, group, probe, peers, compared, { before: 0, after: change.shift }),
    },
  });
  return [{ ...evidence, probe: evidence.probe! }];
}

function size2(change: Acute, probes: number): number {
  return probes === 2 ? change.shift : Math.abs(change.shift);
}
