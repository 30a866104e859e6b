import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { dayAt } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf } from './evidence.ts';
import { settings } from './settings.ts';

/** Defrosts that were due by the circuit's own habit and did not come; kind `defrost-missed`. */
export function missedDefrosts(signals: CircuitSignals): Evidence[] {
  const missed = signals.slots.flatMap((slot) => [...slot.missed]).sort((a, b) => a - b);
  if (missed.length === 0) return fewerThanPlanned(signals);
  const expected = signals.slots.reduce((sum, slot) => sum + slot.expected, 0);
  const first = clusterStart(missed, signals);
  const counted = missed.filter((sample) => sample >= first);
  const dueSince = signals.slots.reduce(
    (sum, { due }) => sum + due.filter((sample) => sample >= first).length,
    0,
  );
  const lastSeen = signals.defrosts.at(-1)?.from ?? 0;
  const isStillSo = counted.at(-1)! > lastSeen || daysSince(counted.at(-1)!, signals) <= 2;
  const share = Math.min(1, counted.length / Math.max(1, dueSince));
  return [
    evidenceOf(signals, {
      kind: 'defrost-missed',
      shape: counted.length < settings.missedDefrosts.value ? 'single' : 'missed',
      probe: null,
      from: first,
      to: isStillSo ? null : counted.at(-1)!,
      certainty: certaintyOf(counted.length, share, signals),
      measures: [
        measure('missedDefrosts', missed.length, '1'),
        measure('expectedDefrosts', expected, '1'),
        measure('missedSince', 100 * share, '%'),
      ],
      features: {
        missed: missed.length,
        missedShare: missed.length / expected,
        missedSinceShare: share,
        perDay: expected / daysSince(0, signals),
        allSince: counted.length > 1 && counted[0]! > lastSeen ? 1 : 0,
      },
    }),
  ];
}

function certaintyOf(count: number, share: number, { defrostSource }: CircuitSignals): number {
  const base = count < settings.missedDefrosts.value ? 0.3 : 0.6 + Math.min(0.2, 0.04 * count) + 0.15 * share;
  return defrostSource === 'status' ? base : base - 0.15;
}

/** The first missed one after which the misses never pause for a week. */
function clusterStart(missed: readonly number[], { log }: CircuitSignals): number {
  const week = (7 * 86_400_000) / log.grid.stepMs;
  let start = missed.length - 1;
  while (start > 0 && missed[start]! - missed[start - 1]! < week) start--;
  return missed[start]!;
}

function daysSince(sample: number, { log }: CircuitSignals): number {
  return ((log.grid.count - sample) * log.grid.stepMs) / 86_400_000;
}

/** The status shows fewer defrosts a day than the site file plans, on most days. */
function fewerThanPlanned(signals: CircuitSignals): Evidence[] {
  const { circuit, defrosts, log, defrostSource } = signals;
  const planned = circuit.defrost.perDay;
  if (planned === null || circuit.defrost.status === null || defrostSource === 'shape') return [];
  const counts = new Int32Array(log.calendar.days.length);
  for (const window of defrosts) counts[dayAt(log.calendar, window.from)]!++;
  const inner = counts.subarray(1, -1);
  const fewer = inner.filter((count) => count < planned).length;
  if (inner.length < 2 || fewer < 0.8 * inner.length) return [];
  const seen = median(inner);
  return [
    evidenceOf(signals, {
      kind: 'defrost-missed',
      shape: seen === 0 ? 'none-seen' : 'fewer-than-planned',
      probe: null,
      from: 0,
      certainty: 0.6,
      measures: [measure('defrostsADay', seen, '/d'), measure('plannedADay', planned, '/d')],
      features: { missedShare: 1 - seen / planned, perDay: planned, missed: fewer },
    }),
  ];
}
