import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import {
  knownZone,
  localTimeKind,
  oddWindows,
  offsetMinutesAt,
  utcFromLocal,
  zoneTransitions,
} from '../../../src/importing/time/zone.ts';

const year2026 = [Date.UTC(2026, 0, 1), Date.UTC(2027, 0, 1)] as const;

describe('time zones by integer arithmetic', () => {
  it('puts the clocks of Denver forward on 8 March and back on 1 November 2026', () => {
    const denver = zoneTransitions('America/Denver', ...year2026);
    expect(offsetMinutesAt(denver, Date.UTC(2026, 0, 15))).toBe(-420);
    expect(offsetMinutesAt(denver, Date.UTC(2026, 6, 15))).toBe(-360);
    expect(oddWindows(denver)).toEqual([
      { kind: 'never', from: Date.UTC(2026, 2, 8, 2), to: Date.UTC(2026, 2, 8, 3) },
      { kind: 'twice', from: Date.UTC(2026, 10, 1, 1), to: Date.UTC(2026, 10, 1, 2) },
    ]);
  });

  it('reads the repeated hour as the earlier or the later instant', () => {
    const denver = zoneTransitions('America/Denver', ...year2026);
    const half = Date.UTC(2026, 10, 1, 1, 30);
    expect(localTimeKind(denver, half)).toBe('twice');
    expect(utcFromLocal(denver, half, 'earlier')).toBe(Date.UTC(2026, 10, 1, 7, 30));
    expect(utcFromLocal(denver, half, 'later')).toBe(Date.UTC(2026, 10, 1, 8, 30));
  });

  it('reads the hour that is skipped in spring with the offset before or after the change', () => {
    const denver = zoneTransitions('America/Denver', ...year2026);
    const half = Date.UTC(2026, 2, 8, 2, 30);
    expect(localTimeKind(denver, half)).toBe('never');
    expect(utcFromLocal(denver, half, 'later')).toBe(Date.UTC(2026, 2, 8, 9, 30));
    expect(utcFromLocal(denver, half, 'earlier')).toBe(Date.UTC(2026, 2, 8, 8, 30));
  });

  it('knows a zone from a word that is none', () => {
    expect(knownZone('Europe/Berlin')).toBe(true);
    expect(knownZone('Larkspur')).toBe(false);
  });

  it.each(['America/Denver', 'Europe/Berlin', 'Australia/Lord_Howe', 'Asia/Kathmandu', 'Africa/Casablanca'])(
    'agrees with the zone database for any local minute in %s',
    (zone) => {
      const transitions = zoneTransitions(zone, Date.UTC(2023, 0, 1), Date.UTC(2027, 0, 1));
      const minute = fc.integer({ min: Date.UTC(2023, 0, 2) / 60000, max: Date.UTC(2026, 11, 30) / 60000 });
      fc.assert(
        fc.property(minute, fc.constantFrom('earlier' as const, 'later' as const), (minutes, resolution) => {
          const plain = Temporal.Instant.fromEpochMilliseconds(minutes * 60000)
            .toZonedDateTimeISO('UTC')
            .toPlainDateTime();
          const expected = plain.toZonedDateTime(zone, { disambiguation: resolution }).epochMilliseconds;
          expect(utcFromLocal(transitions, minutes * 60000, resolution)).toBe(expected);
        }),
        { numRuns: 150 },
      );
    },
  );
});
