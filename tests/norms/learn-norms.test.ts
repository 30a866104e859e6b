import { describe, expect, test } from 'vitest';
import { quantile } from '../../src/maths/quantile.ts';
import type { Finding } from '../../src/model/finding.ts';
import type { Circuit } from '../../src/model/log.ts';
import { judgeReading } from '../../src/norms/judge-reading.ts';
import { learnNorms } from '../../src/norms/learn-norms.ts';
import type { Norm } from '../../src/norms/norm.ts';
import { peerRange } from '../../src/norms/peer-norm.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { finding } from '../reporting/support/example.ts';
import {
  circuitOf,
  gridOf,
  groupOf,
  handMadeLog,
  recordOf,
  startOfHistory,
  valuesOf,
} from '../support/hand-made-log.ts';
import { simpleCase } from '../support/simple-case.ts';

const dayMs = 86_400_000;
const stepMinutes = 10;

const airOf = (norms: readonly Norm[], circuit = 'M01') =>
  norms.find(({ id, circuit: of }) => id === 'air' && of === circuit)!;
const cellOf = (norm: Norm, dayType: string, block: number | null) =>
  norm.cells.find((cell) => cell.dayType === dayType && cell.block === block)!;

/** A circuit without defrosts whose two probes are a number of the day and the hour. */
function plainCircuit(days: number, value: (day: number, hour: number) => number): Circuit {
  const grid = gridOf(days, stepMinutes);
  const record = (name: string) =>
    recordOf(
      name,
      'temperature',
      valuesOf(
        grid,
        (minute) =>
          value(Math.floor(minute / 1440), Math.floor((minute % 1440) / 60)) + 0.01 * ((minute / 10) % 2),
      ),
    );
  return circuitOf({ probes: [record('M01 air A'), record('M01 air B')], setPoint: 2 });
}

describe('what is normal here', () => {
  const days = 21;
  /** 2 °C plus a hundredth a day, and a degree more in the afternoon. */
  const circuit = plainCircuit(days, (day, hour) => 2 + 0.01 * day + (hour >= 12 && hour < 16 ? 1 : 0));
  const signals = computeSignals(handMadeLog({ days, stepMinutes, circuits: [circuit] }));
  const norm = airOf(learnNorms(signals, []));

  test('is p10 to p90 (type 7) of the readings of the same hours and kind of day', () => {
    const { values } = circuit.probes[0]!.record;
    const { calendar, grid } = signals.log;
    const afternoon = Array.from(values).filter((_, i) => {
      const day = calendar.days.find(({ from, to }) => i >= from && i < to)!;
      const hour = (((i - day.from) * grid.stepMs) / 3_600_000) | 0;
      return hour >= 12 && hour < 16 && day.weekday !== 0 && day.weekday !== 6;
    });
    const cell = cellOf(norm, 'weekday', 3);
    expect(cell.days).toBe(15);
    expect(cell.p10).toBeCloseTo(quantile(afternoon, 0.1), 9);
    expect(cell.p90).toBeCloseTo(quantile(afternoon, 0.9), 9);
  });

  test('knows weekends and whole days too', () => {
    expect(cellOf(norm, 'weekend', 3).days).toBe(6);
    expect(cellOf(norm, 'any', null).days).toBe(21);
  });

  test('answers for a reading at its time of day', () => {
    const at = (hour: number) => startOfHistory + 20 * dayMs + hour * 3_600_000;
    expect(judgeReading(norm, 3.1, at(13), signals.log)).toMatchObject({ position: 'usual', side: 'within' });
    expect(judgeReading(norm, 3.1, at(3), signals.log)).toMatchObject({ position: 'unusual', side: 'above' });
  });
});

describe('a fault is not learnt', () => {
  const days = 20;
  /** From day 10 on three degrees warmer. */
  const circuit = plainCircuit(days, (day) => (day < 10 ? 2 : 5));
  const log = handMadeLog({ days, stepMinutes, circuits: [circuit] });
  const signals = computeSignals(log);
  const fault = (changes: Partial<Finding>) =>
    finding(log, { circuit: 'M01', onset: startOfHistory + 10 * dayMs, ...changes });
  const wholeDay = (findings: readonly Finding[]) =>
    cellOf(airOf(learnNorms(signals, findings)), 'any', null);

  test('while its finding stands the norm stays frozen at what it was', () => {
    const norm = airOf(learnNorms(signals, [fault({})]));
    expect(norm.frozenSince).toBe(startOfHistory + 10 * dayMs);
    expect(norm.quietDays).toBe(10);
    expect(wholeDay([fault({})]).p90).toBeLessThan(2.1);
  });

  test('days of a finding that ended are left out, those after it count again', () => {
    const cell = wholeDay([fault({ end: startOfHistory + 15 * dayMs })]);
    expect(cell.days).toBe(15);
    expect(cell.p90).toBeGreaterThan(4.9);
  });

  test('a note leaves no day out; a finding of the rack that covers the circuit does', () => {
    expect(wholeDay([fault({ severity: 'note' })]).days).toBe(20);
    expect(wholeDay([fault({ circuit: null, covers: ['M01'] })]).days).toBe(10);
  });

  test('fewer than three quiet days are no norm', () => {
    expect(learnNorms(signals, [fault({ onset: startOfHistory + 2 * dayMs })])).toEqual([]);
  });
});

test('a point that follows the weather is held against what is usual at the outdoor temperature of the day', () => {
  const days = 20;
  const grid = gridOf(days, stepMinutes);
  const outdoorOf = (day: number) => 15 + 8 * Math.sin(day * 1.3);
  const outdoor = recordOf(
    'Outdoor',
    'temperature',
    valuesOf(grid, (minute) => outdoorOf(Math.floor(minute / 1440))),
  );
  const level = recordOf(
    'S1 receiver',
    'fraction',
    valuesOf(
      grid,
      (minute) => 0.6 - 0.01 * outdoorOf(Math.floor(minute / 1440)) + 0.002 * ((minute / 10) % 3),
    ),
  );
  const group = groupOf({ liquidLevel: level });
  const log = handMadeLog({ days, stepMinutes, suctionGroups: [group], unassigned: [outdoor] });
  const [norm] = learnNorms(computeSignals(log), []);
  expect(norm!.tie!.slope).toBeCloseTo(-0.01, 4);
  const hottest = [...Array(days).keys()].reduce((a, b) => (outdoorOf(b) > outdoorOf(a) ? b : a));
  const verdict = judgeReading(
    norm!,
    0.6 - 0.01 * outdoorOf(hottest),
    startOfHistory + hottest * dayMs + 3_600_000,
    log,
  )!;
  expect(verdict.outdoor).toBeCloseTo(outdoorOf(hottest), 6);
  expect(verdict.p90).toBeLessThan(
    norm!.cells.find(({ dayType, block }) => dayType === 'any' && block === null)!.p90,
  );
});

test('the peers stand beside it, at the set point of this circuit', () => {
  const days = 6;
  const grid = gridOf(days, stepMinutes);
  const circuits = [2, 3, 4].map((setPoint, k) =>
    simpleCase(grid, { id: `M0${k + 1}`, suctionGroup: 'S1', setPoint: () => setPoint, seed: k + 1 }),
  );
  const signals = computeSignals(handMadeLog({ days, stepMinutes, circuits, suctionGroups: [groupOf()] }));
  const norms = learnNorms(signals, []);
  const peers = peerRange(airOf(norms), norms, signals)!;
  expect(peers.circuits).toBe(2);
  expect((peers.p10 + peers.p90) / 2).toBeCloseTo(2, 0);
});
