import { describe, expect, it } from 'vitest';
import { exampleStore } from '../../sample-logs/maker/examples.ts';
import { toLog } from '../../sample-logs/maker/to-log.ts';
import { diagnose } from '../../src/diagnosis/diagnose.ts';
import type { Finding } from '../../src/model/finding.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';

function findingOf(simulator: 'one' | 'two', fault: 'local-leak' | 'probe-step', seed: number): Finding {
  const store = exampleStore('healthy', {
    seed,
    simulator,
    mediumCircuits: 2,
    lowCircuits: 0,
    days: 21,
    first: { sections: 4 },
    faults: [{ fault, on: 'M01', place: 3, onsetDay: 9.4, size: 6 }],
  });
  const { findings } = diagnose(computeSignals(toLog(store, { logging: { intervalMinutes: 5 } })));
  return findings.find(({ circuit, severity }) => circuit === 'M01' && severity !== 'note')!;
}

const cannotTell = 'the data cannot tell';

describe.each(['one', 'two'] as const)(
  'one place that reads warm from one hour on, of simulator %s',
  (simulator) => {
    it.each([741, 742])('is its probe where the offset is added to the reading (seed %i)', (seed) => {
      const { origin, causes, summary } = findingOf(simulator, 'probe-step', seed);
      expect([origin, causes[0]!.cause]).toEqual(['probe', 'probe-offset']);
      expect(summary).not.toContain(cannotTell);
      expect(causes[0]!.because).toContain('the same before, in and after defrosts');
    });

    it('is seldom said to be surely its probe where store air comes in: some leaks are as steady as a lie', () => {
      const found = [741, 742, 743].map((seed) => findingOf(simulator, 'local-leak', seed));
      const misled = found.filter(
        ({ origin, summary }) => origin === 'probe' && !summary.includes(cannotTell),
      );
      expect(misled.length).toBeLessThanOrEqual(1);
      for (const { causes, wouldDecide } of found) {
        expect(new Set(causes.map(({ cause }) => cause)).size).toBe(causes.length);
        expect(wouldDecide).toContain('reference thermometer');
      }
      expect(found.filter(({ causes }) => causes[0]!.cause === 'door-or-load').length).toBeGreaterThanOrEqual(
        2,
      );
    });
  },
);
