import type { ImportReport } from '../../model/import-report.ts';
import type { Readings } from '../readings.ts';
import type { GuessNote } from './guess-note.ts';

/** The zone in which the readings were placed, and who said so. */
export type KnownZone = Pick<ImportReport, 'timeZone' | 'timeZoneSource'>;

export function zoneOf({ timeZone, report }: Readings): KnownZone {
  return { timeZone, timeZoneSource: report.timeZoneSource };
}

export function zoneNotes({ timeZoneSource }: KnownZone): GuessNote[] {
  if (timeZoneSource === 'site') return [];
  const [confidence, because] = {
    option: [0.95, 'given with --time-zone'] as const,
    machine: [0.4, 'the zone of this machine, since the export says none'] as const,
    'offsets-in-export': [0.7, 'by the offsets in the export'] as const,
  }[timeZoneSource];
  return [{ path: ['timeZone'], confidence, because }];
}

export function zoneQuestions({ timeZone, timeZoneSource }: KnownZone): string[] {
  if (timeZoneSource !== 'machine') return [];
  return [`In which time zone does the store stand? ${timeZone}, that of this machine, was taken.`];
}
