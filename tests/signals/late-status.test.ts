import { describe, expect, it } from 'vitest';
import { exampleStore } from '../../sample-logs/maker/examples.ts';
import type { SimulatedStore } from '../../sample-logs/maker/simulated-store.ts';
import { toLog } from '../../sample-logs/maker/to-log.ts';
import { median } from '../../src/maths/median.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';

/** The same store with every defrost state logged `minutes` late, as a slow poll or a change-of-value network does. */
function withLateStates(store: SimulatedStore, minutes: number): SimulatedStore {
  const late = structuredClone(store);
  for (const { others } of late.circuits) {
    const { values } = others.find(({ role }) => role === 'defrost')!;
    values.copyWithin(minutes, 0, values.length - minutes);
    values.fill(values[minutes]!, 0, minutes);
  }
  return late;
}

describe.each(['one', 'two'] as const)('defrost states that come late, simulator %s', (simulator) => {
  const store = exampleStore('healthy', { seed: 811, simulator, mediumCircuits: 2, lowCircuits: 0, days: 8 });
  const seen = (minutes: number) => {
    const { circuits } = computeSignals(
      toLog(withLateStates(store, minutes), { logging: { intervalMinutes: 1 } }),
    );
    return circuits.map(({ defrosts, level }) => ({
      defrosts: defrosts.length,
      recovery: median(
        defrosts.flatMap(({ probes }) => probes.map(({ recoveryMinutes }) => recoveryMinutes ?? Number.NaN)),
      ),
      level: median(level),
    }));
  };

  it('shorten every recovery by as much, and move neither the count of defrosts nor the settled level', () => {
    const onTime = seen(0);
    for (const minutes of [2, 5]) {
      seen(minutes).forEach((late, c) => {
        expect(late.defrosts).toBe(onTime[c]!.defrosts);
        expect(Math.abs(onTime[c]!.recovery - late.recovery - minutes)).toBeLessThan(2);
        expect(Math.abs(late.level - onTime[c]!.level)).toBeLessThan(0.1);
      });
    }
  });
});
