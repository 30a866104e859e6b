import type { EpochMs } from '../units/quantities.ts';

/** 32-bit FNV-1a over the UTF-16 code units (Fowler, Noll, Vo; draft-eastlake-fnv), as eight hex digits. */
export function fnv1a(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    hash ^= text.charCodeAt(i);
    hash = Math.imul(hash, 0x01000193);
  }
  return (hash >>> 0).toString(16).padStart(8, '0');
}

/** Same site, kind, place and onset day: same id, in every run and on every machine. */
export function findingId(parts: {
  readonly site: string;
  readonly kind: string;
  readonly suctionGroup: string | null;
  readonly circuit: string | null;
  readonly probe: string | null;
  readonly points: readonly string[];
  readonly shape: string;
  readonly onset: EpochMs;
}): string {
  const day = Math.floor(parts.onset / 86_400_000);
  const text = [
    parts.site,
    parts.kind,
    parts.suctionGroup ?? '',
    parts.circuit ?? '',
    parts.probe ?? parts.points.join(','),
    parts.shape,
    day,
  ].join('\u0000');
  return fnv1a(text) + fnv1a(`${text}\u0000again`);
}
