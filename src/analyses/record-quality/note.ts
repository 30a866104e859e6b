import type { Evidence, Measure } from '../../model/evidence.ts';
import type { EpochMs } from '../../units/quantities.ts';
import { meta } from './meta.ts';

export interface RecordNote {
  readonly shape: string;
  readonly circuit: string | null;
  readonly suctionGroup: string | null;
  readonly points: readonly string[];
  readonly onset: EpochMs;
  readonly end: EpochMs | null;
  readonly certainty: number;
  readonly measures: readonly Measure[];
  readonly features?: Readonly<{ [name: string]: number }>;
}

export function recordNote(note: RecordNote): Evidence {
  return {
    analysis: meta.id,
    kind: 'record-quality',
    probe: note.points.length === 1 ? note.points[0]! : null,
    ...note,
    features: note.features ?? {},
  };
}
