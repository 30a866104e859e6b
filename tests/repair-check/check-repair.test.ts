import { describe, expect, test } from 'vitest';
import { wilsonInterval } from '../../src/maths/wilson-interval.ts';
import { creepUntil, type Repair, repaired } from './repairs.ts';

const servicedDay = 14.4;
const faults = ['warm-end', 'weak-cooling', 'lying-probe'] as const;
const after = (course: (day: number) => number, days = 24) => ({
  course: creepUntil(servicedDay, course),
  servicedDay,
  days,
});

describe.each(faults)('%s', (fault) => {
  test('gone with the visit: recovered, and by how much with an interval', () => {
    const check = repaired({ fault, ...after(() => 0) });
    expect(check.verdict).toBe('recovered');
    const [lead] = check.judged;
    expect(lead!.gone!.share).toBeGreaterThan(0.9);
    expect(lead!.low).toBeLessThan(lead!.difference);
    expect(lead!.high).toBeGreaterThan(lead!.difference);
    expect(lead!.high * lead!.low).toBeGreaterThan(0);
  });

  test('half gone: partly', () => {
    expect(repaired({ fault, ...after(() => 0.5) }).verdict).toBe('partly');
  });

  test('as before, or still growing: unchanged', () => {
    expect(repaired({ fault, ...after(() => 1) }).verdict).toBe('unchanged');
    expect(repaired({ fault, ...after((day) => 1 + (day - servicedDay) / 10) }).verdict).toBe('unchanged');
  });

  test('gone for three days and back again: partly, and says that it came back', () => {
    const check = repaired({ fault, ...after((day) => (day < servicedDay + 3 ? 0 : 1)) });
    expect(check).toMatchObject({ verdict: 'partly', relapsed: true });
  });

  test('fourteen hours and two defrosts later: too early, and says what is needed', () => {
    const check = repaired({ fault, ...after(() => 0, 15) });
    expect(check.verdict).toBe('too-early');
    expect(check.tooEarly).toContain('at least 24 h and 3 defrosts');
  });
});

test('a service with nothing before it in the export is not judged', () => {
  const check = repaired({ fault: 'warm-end', course: () => 0, servicedDay: 0.5, days: 8 });
  expect(check).toMatchObject({ verdict: 'too-early' });
  expect(check.tooEarly).toContain('less than a day before');
});

test('a circuit on which nothing stood out is unchanged, with no measure to judge', () => {
  expect(repaired({ fault: 'warm-end', course: () => 0, servicedDay: 10.4, days: 18 })).toMatchObject({
    verdict: 'unchanged',
    judged: [],
  });
});

test.each(faults)(
  '%s that begins with the visit is told as new, and is no verdict on the repair',
  (fault) => {
    const course = (day: number): number => (day > servicedDay ? 1 : 0);
    const check = repaired({ fault, course, servicedDay, days: 24 });
    expect(check).toMatchObject({ verdict: 'unchanged', judged: [] });
    const [worst] = check.newTroubles;
    expect(worst!.newTrouble).toBeGreaterThan(1);
    expect(worst!.low * worst!.high).toBeGreaterThan(0);
  },
);

test('a healthy circuit has no new trouble at service times that mean nothing', () => {
  for (let seed = 1; seed <= 20; seed++) {
    const servicedDay = 4.1 + ((seed * 0.73) % 12);
    const check = repaired({
      fault: 'warm-end',
      course: () => 0,
      seed,
      servicedDay,
      days: 20,
      stepMinutes: 10,
    });
    expect(check.newTroubles).toEqual([]);
  }
});

/** How often "recovered" is said where nothing was repaired, at service times that mean nothing. */
test('is falsely called recovered in fewer than one of twenty visits that repaired nothing', () => {
  const courses: readonly Repair['course'][] = [
    () => 0,
    () => 1,
    (day) => (day > 6 ? 1 : 0),
    (day) => Math.max(0, (day - 6) / 12),
  ];
  let recovered = 0;
  let visits = 0;
  for (let seed = 1; seed <= 10; seed++) {
    for (const fault of faults) {
      for (const course of courses) {
        const check = repaired({
          fault,
          course,
          seed,
          servicedDay: 8.1 + ((seed * 0.37) % 9),
          days: 21,
          stepMinutes: 10,
        });
        visits++;
        if (check.verdict === 'recovered') recovered++;
      }
    }
  }
  expect(visits).toBe(120);
  expect(wilsonInterval(recovered, visits).high).toBeLessThan(0.05);
});
