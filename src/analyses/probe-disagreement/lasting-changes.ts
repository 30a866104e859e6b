import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { dayAt, timeAt } from '../../model/grid.ts';
import type { CircuitSignals, GroupSignals } from '../../signals/types.ts';
import { announcedFrom } from './announced.ts';
import { behaviour } from './behaviour.ts';
import { changeEvidence } from './change-evidence.ts';
import { changeInDays, type DayChange } from './change-in-days.ts';
import { type Comparison, comparisonOfDays } from './comparison.ts';
import { earlyWitness } from './early-witness.ts';
import { findStep, jumpShare } from './find-step.ts';
import type { OffsetTable } from './offset-table.ts';
import { pairDifferences } from './pair-differences.ts';
import { plausibility } from './plausibility.ts';
import { accusedProbes } from './votes.ts';

/** Changes of days and weeks between neighbours, each with what tells truth from lie. */
export function lastingChanges(
  signals: CircuitSignals,
  table: OffsetTable,
  group: GroupSignals | null,
  living: readonly number[],
): Evidence[] {
  const pairs = pairDifferences(signals, living);
  const accused = accusedProbes(pairs, living);
  const named = new Set(accused.map((one) => one.probe));
  const evidence: Evidence[] = [];
  for (const { probe, votes } of accused) {
    const peers = living.filter((other) => other !== probe && !named.has(other));
    const offsets = offsetFrom(signals, probe, peers);
    const level = changeInDays(offsets);
    if (level === null) continue;
    const { calendar } = signals.log;
    const leap = findStep(signals, table, probe, peers, level);
    const announced = leap === null ? null : announcedFrom(offsets, level, dayAt(calendar, leap));
    const change = announced === null ? level : { ...level, start: announced, rampProbability: 1 };
    const step = announced === null ? leap : null;
    const { days } = calendar;
    const compared = comparison(change, offsets.length, step !== null);
    const samples = since(step, comparisonOfDays(calendar, compared.old, compared.now));
    const witness = step === null ? earlyWitness(signals, probe, peers, change) : null;
    const startDay = days[witness ?? change.start]!;
    const onset = step ?? (startDay.from + startDay.to) >> 1;
    const endedAt = change.endedOn === null ? null : days[change.endedOn]!.from;
    evidence.push(
      changeEvidence(signals, probe, peers, {
        shape: step === null ? 'creep' : 'step',
        onset: timeAt(signals.log.grid, onset),
        end: endedAt === null ? null : timeAt(signals.log.grid, endedAt),
        certainty: certaintyOf(change, offsets.length),
        shift: change.after - change.before,
        error: change.scale,
        features: {
          votes,
          probes: living.length,
          rampDays: change.end - change.start,
          creeping: creeping(change, step === null ? null : jumpShare(table, probe, peers, change, step)),
          witnessDays: witness === null ? 0 : change.start - witness,
          daysBefore: change.start + 1,
          daysSince: (change.endedOn ?? offsets.length) - change.start,
          offsetBefore: change.before,
          offsetNow: change.after,
          ...ownLevels(signals, probe, peers, compared),
          ...behaviour(signals, table, probe, peers, samples),
          ...plausibility(signals, group, probe, peers, samples, change),
        },
      }),
    );
  }
  return evidence;
}

/** By the days, and by the hours where they show a jump: a step may go on creeping, a creep hides no jump. */
function creeping({ rampProbability }: DayChange, jump: number | null): number {
  if (jump === null) return Math.max(0.5, rampProbability);
  const left = Number.isFinite(jump) ? Math.max(0, 1 - jump) : 0.5;
  return Math.min(0.5, rampProbability, left);
}

export function offsetFrom(signals: CircuitSignals, probe: number, peers: readonly number[]): Float64Array {
  const own = signals.probes[probe]!.median;
  return own.map((value, day) => value - median(peers.map((peer) => signals.probes[peer]!.median[day]!)));
}

const leastDaysBefore = 2;
const grownShare = 0.6;

/** Which days to hold against which: all before the change, and those after most of it. */
function comparison(change: DayChange, dayCount: number, step: boolean) {
  const old = change.start + 1 >= leastDaysBefore ? { from: 0, to: change.start + 1 } : { from: 0, to: 0 };
  const to = change.endedOn ?? dayCount;
  const grown = Math.round(change.start + grownShare * (change.end - change.start));
  return { old, now: { from: Math.min(step ? change.end : grown, to - 1), to } };
}

/** Nothing of the hours before a step belongs to what came after it. */
function since(step: number | null, { old, now }: Comparison): Comparison {
  return { old, now: { from: Math.min(Math.max(now.from, step ?? 0), now.to), to: now.to } };
}

/** How far the probe itself and its neighbours moved, K: with average control both do. */
function ownLevels(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
  compared: ReturnType<typeof comparison>,
): { [feature: string]: number } {
  const moved = (one: number): number => {
    const { median: daily } = signals.probes[one]!;
    const now = median(daily.subarray(compared.now.from, compared.now.to));
    return now - median(daily.subarray(compared.old.from, compared.old.to));
  };
  const ownRise = moved(probe);
  const peersRise = median(peers.map(moved));
  return Number.isFinite(ownRise) && Number.isFinite(peersRise) ? { ownRise, peersRise } : {};
}

/** Rises with the size in scales of scatter and with the share explained; few days hold it down. */
function certaintyOf(change: DayChange, dayCount: number): number {
  const signal = Math.abs(change.after - change.before) / change.scale;
  const days = Math.min(
    1,
    (change.endedOn ?? dayCount) / 10,
    ((change.endedOn ?? dayCount) - change.start) / 3,
  );
  return Math.min(0.99, change.explained * (1 - Math.exp(-signal / 4))) * (0.6 + 0.4 * days);
}
