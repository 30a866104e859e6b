import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { timeAt } from '../../model/grid.ts';
import { type CircuitSignals, type GroupSignals, healthyNeighbourSpread } from '../../signals/types.ts';
import { behaviour } from './behaviour.ts';
import { changeEvidence } from './change-evidence.ts';
import { offsetFrom } from './lasting-changes.ts';
import type { OffsetTable } from './offset-table.ts';
import { plausibility } from './plausibility.ts';
import { settings } from './settings.ts';

const leastDays = 2;

/** Probes that have stood apart since the first day, with no change: a habit up to the wide spread, more above. */
export function oldHabits(
  signals: CircuitSignals,
  table: OffsetTable,
  group: GroupSignals | null,
  living: readonly number[],
  seen: ReadonlySet<string | null>,
): Evidence[] {
  const evidence: Evidence[] = [];
  let candidates = living.filter((probe) => !seen.has(signals.circuit.probes[probe]!.point));
  while (candidates.length >= 2) {
    const far = farthest(signals, candidates);
    if (far === null) break;
    const { probe, peers, offset } = far;
    const wide = Math.abs(offset) >= settings.wideSpread.value;
    const compared = { old: { from: 0, to: 0 }, now: { from: 0, to: signals.log.grid.count } };
    evidence.push(
      changeEvidence(signals, probe, peers, {
        shape: wide ? 'wide-since-start' : 'constant',
        onset: timeAt(signals.log.grid, 0),
        end: null,
        certainty: wide ? 0.6 : 0.9,
        shift: offset,
        error: 0.3,
        features: {
          votes: 1,
          probes: candidates.length,
          sinceStart: 1,
          ...behaviour(signals, table, probe, peers, compared),
          ...plausibility(signals, group, probe, peers, compared, { before: 0, after: offset }),
        },
      }),
    );
    candidates = peers;
    if (candidates.length < 2) break;
  }
  return evidence;
}

function farthest(signals: CircuitSignals, candidates: readonly number[]) {
  let best: { probe: number; peers: number[]; offset: number } | null = null;
  for (const probe of candidates) {
    const peers = candidates.filter((other) => other !== probe);
    const daily = offsetFrom(signals, probe, peers).filter(Number.isFinite);
    if (daily.length < leastDays) continue;
    const offset = median(daily);
    // Half the distance in a pair belongs to each side; name the warm one.
    const least = healthyNeighbourSpread * (candidates.length === 2 ? 1.25 : 1);
    if (Math.abs(offset) < least || (candidates.length === 2 && offset < 0)) continue;
    if (best === null || Math.abs(offset) > Math.abs(best.offset)) {
      best = { probe, peers, offset };
    }
  }
  return best;
}
