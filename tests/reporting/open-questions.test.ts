import { describe, expect, test } from 'vitest';
import type { Abstention } from '../../src/model/evidence.ts';
import { openQuestions, placesText } from '../../src/reporting/open-questions.ts';
import { troubledExample } from './support/example.ts';

const { log, diagnosis } = troubledExample();

function abstention(circuit: string, reason: string): Abstention {
  return { analysis: 'short-cycling', circuit, suctionGroup: null, reason, needs: 'readings every minute' };
}

describe('what cannot be judged', () => {
  test('is said once where only the point differs, with all places', () => {
    const valves = log.circuits.flatMap(({ id, valve }) =>
      valve === null ? [] : [{ id, point: valve.point }],
    );
    const abstentions = valves.map(({ id, point }) =>
      abstention(id, `${point} is logged every 5 min: too coarse`),
    );
    const [question, ...others] = openQuestions({ ...diagnosis, abstentions }, log);
    expect(others).toEqual([]);
    expect(question!.places).toEqual(valves.map(({ id }) => id));
    expect(question!.reason).toMatch(/ and \d more are logged every 5 min: too coarse\.$/);
    expect(question!.needs).toBe('Readings every minute.');
  });

  test('keeps different questions apart, the widest first', () => {
    const abstentions = [
      abstention('M01', 'the history is short'),
      abstention('M01', 'nothing is logged'),
      abstention('M02', 'nothing is logged'),
    ];
    const reasons = openQuestions({ ...diagnosis, abstentions }, log).map(({ reason }) => reason);
    expect(reasons).toEqual(['Nothing is logged.', 'The history is short.']);
  });

  test('names a few places and counts the rest', () => {
    expect(placesText(['M01'])).toBe('M01');
    expect(placesText(['M01', 'M02', 'M03'])).toBe('M01, M02 and M03');
    expect(placesText(['a', 'b', 'c', 'd', 'e'], 3)).toBe('a, b and 3 more');
  });
});
