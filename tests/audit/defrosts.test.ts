import { describe, expect, test } from 'vitest';
import type { SimulatedCircuit, SimulatedStore } from '../../sample-logs/maker/simulated-store.ts';
import { tableNamed } from '../../src/audit/month-audit.ts';
import { median } from '../../src/maths/median.ts';
import { objectsOf, simulatedAudit } from './support.ts';

const minuteMs = 60_000;

interface TrueDefrost {
  /** Minutes since the start of the log; the end is the first minute after it. */
  readonly from: number;
  readonly to: number;
}

function trueDefrosts(circuit: SimulatedCircuit): TrueDefrost[] {
  const { values } = circuit.others.find(({ role }) => role === 'defrost')!;
  const found: TrueDefrost[] = [];
  let from = -1;
  values.forEach((value, minute) => {
    if (value > 0.5 && from < 0) from = minute;
    if (value > 0.5 || from < 0) return;
    found.push({ from, to: minute });
    from = -1;
  });
  return found;
}

/**
 * Recovery on the plant's own minutes, before any logger rounded them, straight from its definition: the mean of the
 * last ten minutes down to the usual settled level + half the dead band + 0.6 K.
 */
function trueRecovery(air: Float64Array, { to }: TrueDefrost, until: number, level: number): number | null {
  for (let minute = to; minute < until; minute++) {
    if (air[minute]! > level) continue;
    const window = air.subarray(Math.max(to, minute - 9), minute + 1);
    if (window.reduce((sum, value) => sum + value, 0) / window.length <= level) return minute - to;
  }
  return null;
}

/** Settled means from an hour after a defrost on. */
function usualLevel(air: Float64Array, defrosts: readonly TrueDefrost[]): number {
  return median(air.filter((_, i) => !defrosts.some(({ from, to }) => i >= from && i < to + 60)));
}

const circuitsOf = (store: SimulatedStore) =>
  store.circuits.filter(({ others }) => others.some(({ role }) => role === 'defrost'));

describe.each([1, 5])(
  'defrosts.csv against the truth of a simulated store, logged every %i min',
  (interval) => {
    const made = simulatedAudit(
      'healthy',
      { days: 8, lowCircuits: 0 },
      { logging: { intervalMinutes: interval } },
    );

    test('holds every defrost, its start and end within one interval', async () => {
      const { store, audit } = await made;
      const rows = objectsOf(tableNamed(audit, 'defrosts'));
      for (const circuit of circuitsOf(store)) {
        const truth = trueDefrosts(circuit);
        const starts = [
          ...new Set(
            rows.filter((row) => row['circuit'] === circuit.id).map((row) => `${row['start']} ${row['end']}`),
          ),
        ];
        const seen = starts.map((pair) =>
          pair.split(' ').map((time) => (Date.parse(time) - store.startMs) / minuteMs),
        );
        expect(seen).toHaveLength(truth.length);
        truth.forEach(({ from, to }, k) => {
          expect(Math.abs(seen[k]![0]! - from)).toBeLessThanOrEqual(interval);
          expect(Math.abs(seen[k]![1]! - to)).toBeLessThanOrEqual(interval);
        });
      }
    });

    test('recovery lies within two intervals of the truth, in nineteen of twenty rows', async () => {
      const { store, audit } = await made;
      const rows = objectsOf(tableNamed(audit, 'defrosts'));
      let near = 0;
      let judged = 0;
      for (const circuit of circuitsOf(store)) {
        const truth = trueDefrosts(circuit);
        circuit.air.forEach(({ values }, place) => {
          const level = usualLevel(values, truth) + circuit.differential / 2 + 0.6;
          const own = rows.filter((row) => row['circuit'] === circuit.id);
          const points = [...new Set(own.map((row) => row['probe']))];
          const mine = own.filter((row) => row['probe'] === points[place]);
          truth.forEach((defrost, k) => {
            const expected = trueRecovery(values, defrost, truth[k + 1]?.from ?? store.count, level);
            const recovery = mine[k]!['recoveryMinutes'];
            if (mine[k]!['complete'] !== true || expected === null || typeof recovery !== 'number') return;
            judged++;
            if (Math.abs(recovery - expected) <= 2 * interval) near++;
          });
        });
      }
      expect(judged).toBeGreaterThan(200);
      expect(near / judged).toBeGreaterThan(0.95);
    });
  },
);

test('without a status the shape of the air gives start and end within ten minutes, nearly always', async () => {
  const { store, audit } = await simulatedAudit(
    'healthy',
    { days: 10, lowCircuits: 0 },
    { without: ['defrost'] },
  );
  const rows = objectsOf(tableNamed(audit, 'defrosts'));
  expect(new Set(rows.map((row) => row['source']))).toEqual(new Set(['shape']));
  let near = 0;
  let all = 0;
  for (const circuit of circuitsOf(store)) {
    const seen = rows
      .filter((row) => row['circuit'] === circuit.id)
      .map((row) => (Date.parse(String(row['start'])) - store.startMs) / minuteMs);
    for (const { from } of trueDefrosts(circuit)) {
      all++;
      if (seen.some((start) => Math.abs(start - from) <= 10)) near++;
    }
  }
  expect(near / all).toBeGreaterThan(0.95);
});

test.each([1, 5])(
  'the minutes at the melting point, logged every %i min, lie within two intervals of those of its air',
  async (interval) => {
    const { store, audit } = await simulatedAudit(
      'healthy',
      { days: 20, lowCircuits: 0 },
      { logging: { intervalMinutes: interval } },
    );
    const rows = objectsOf(tableNamed(audit, 'defrosts'));
    const melting = (value: number) => Math.abs(value) <= 0.6;
    const apart: number[] = [];
    for (const circuit of circuitsOf(store)) {
      const own = rows.filter((row) => row['circuit'] === circuit.id);
      const points = [...new Set(own.map((row) => row['probe']))];
      circuit.air.forEach(({ values }, place) => {
        const mine = own.filter((row) => row['probe'] === points[place]);
        trueDefrosts(circuit).forEach(({ from, to }, k) => {
          const expected = values.subarray(from, to).filter(melting).length;
          if (expected > 0) apart.push(Math.abs(Number(mine[k]!['meltMinutes']) - expected));
        });
      });
    }
    expect(apart.length).toBeGreaterThan(20);
    expect(apart.filter((minutes) => minutes <= 2 * interval).length / apart.length).toBeGreaterThan(0.95);
  },
);
