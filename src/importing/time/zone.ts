import { Temporal } from 'temporal-polyfill';
import type { EpochMs } from '../../units/quantities.ts';

/**
 * The offsets of one time zone over a span: from `starts[i]` (UTC ms) on, local time is UTC plus
 * `offsets[i]` ms. `starts` ascends and `starts[0]` is the beginning of the span.
 */
export interface ZoneTransitions {
  readonly zone: string;
  readonly starts: Float64Array;
  readonly offsets: Float64Array;
}

/** How a local time that happens twice (clocks put back) or never (put forward) is read. */
export type Resolution = 'earlier' | 'later';

export type LocalTimeKind = 'once' | 'twice' | 'never';

const dayMs = 86_400_000;
const fewestMs = -8.64e15;
const mostMs = 8.64e15;

/** True for an IANA zone (`Europe/Berlin`) or a fixed offset (`+01:00`) that the zone database knows. */
export function knownZone(zone: string): boolean {
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(zone);
    return true;
  } catch {
    return false;
  }
}

/**
 * Every change of offset of `zone` from two days before `fromMs` to two days after `toMs`. Asked of the zone
 * database once; everything after is integer arithmetic. Throws RangeError for an unknown zone.
 */
export function zoneTransitions(zone: string, fromMs: EpochMs, toMs: EpochMs): ZoneTransitions {
  const first = Math.max(fewestMs, Math.floor(fromMs) - 2 * dayMs);
  const last = Math.min(mostMs, Math.ceil(toMs) + 2 * dayMs);
  const starts = [first];
  let here = Temporal.Instant.fromEpochMilliseconds(first).toZonedDateTimeISO(zone);
  const offsets = [here.offsetNanoseconds / 1e6];
  for (;;) {
    const next = here.getTimeZoneTransition('next');
    if (next === null || next.epochMilliseconds > last) break;
    starts.push(next.epochMilliseconds);
    offsets.push(next.offsetNanoseconds / 1e6);
    here = next;
  }
  return { zone, starts: Float64Array.from(starts), offsets: Float64Array.from(offsets) };
}

function segmentAt(transitions: ZoneTransitions, utcMs: EpochMs): number {
  const { starts } = transitions;
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (starts[middle]! <= utcMs) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Offset from UTC in minutes at the instant `utcMs`. */
export function offsetMinutesAt(transitions: ZoneTransitions, utcMs: EpochMs): number {
  return transitions.offsets[segmentAt(transitions, utcMs)]! / 60_000;
}

/**
 * The instant at which clocks of the zone show `localMs` (ms since 1970-01-01T00:00 on the local clock). A
 * time that happens twice gives the `earlier` or the `later` instant. A time that never happens is read with
 * the offset before the change (`later`, which is what a clock that was not put forward yet shows) or after
 * it (`earlier`).
 */
export function utcFromLocal(transitions: ZoneTransitions, localMs: number, resolution: Resolution): EpochMs {
  const { starts, offsets } = transitions;
  const around = segmentAt(transitions, localMs);
  let earliest = Number.NaN;
  let latest = Number.NaN;
  for (let segment = Math.max(0, around - 2); segment <= Math.min(starts.length - 1, around + 2); segment++) {
    const utc = localMs - offsets[segment]!;
    const begins = segment === 0 ? Number.NEGATIVE_INFINITY : starts[segment]!;
    const ends = segment === starts.length - 1 ? Number.POSITIVE_INFINITY : starts[segment + 1]!;
    if (utc < begins || utc >= ends) continue;
    if (Number.isNaN(earliest)) earliest = utc;
    latest = utc;
  }
  if (!Number.isNaN(earliest)) return resolution === 'earlier' ? earliest : latest;
  const after = skippedBy(transitions, localMs);
  return localMs - offsets[resolution === 'later' ? after - 1 : after]!;
}

/** The segment whose beginning skips `localMs`. */
function skippedBy(transitions: ZoneTransitions, localMs: number): number {
  const { starts, offsets } = transitions;
  for (let segment = 1; segment < starts.length; segment++) {
    const from = starts[segment]! + offsets[segment - 1]!;
    const to = starts[segment]! + offsets[segment]!;
    if (localMs >= from && localMs < to) return segment;
  }
  return Math.max(1, segmentAt(transitions, localMs));
}

/** Local windows [from, to) that happen twice or never, in order. */
export interface OddWindow {
  readonly kind: 'twice' | 'never';
  readonly from: number;
  readonly to: number;
}

export function oddWindows(transitions: ZoneTransitions): readonly OddWindow[] {
  const windows: OddWindow[] = [];
  for (let segment = 1; segment < transitions.starts.length; segment++) {
    const change = transitions.starts[segment]!;
    const before = change + transitions.offsets[segment - 1]!;
    const after = change + transitions.offsets[segment]!;
    if (after < before) windows.push({ kind: 'twice', from: after, to: before });
    else if (after > before) windows.push({ kind: 'never', from: before, to: after });
  }
  return windows;
}

/** Whether clocks of the zone show `localMs` once, twice or never. */
export function localTimeKind(transitions: ZoneTransitions, localMs: number): LocalTimeKind {
  for (const window of oddWindows(transitions)) {
    if (localMs >= window.from && localMs < window.to) return window.kind;
  }
  return 'once';
}
