import { describe, expect, it } from 'vitest';
import { diagnose } from '../../src/diagnosis/diagnose.ts';
import type { Finding } from '../../src/model/finding.ts';
import type { Log } from '../../src/model/log.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { handMadeStore, startMs, still } from '../analyses/support/hand-made-store.ts';

// Every fact in this file: common practice, no source.

const dayMs = 86_400_000;
const quiet = (id: string) => ({ id, probes: [still, still, still] });
const fahrenheit = (difference: number): number => difference / 1.8;
const flags = (log: Log): Finding[] =>
  diagnose(computeSignals(log)).findings.filter((finding) => finding.severity !== 'note');

describe('a produce line-up at 37 °F with a 2 °F dead band, defrosted off-cycle four times a day for 45 minutes', () => {
  it('is silent while its three probes keep to their places', () => {
    const log = handMadeStore({ days: 21, circuits: [quiet('M01'), quiet('M02'), quiet('M03')] });
    expect(flags(log)).toEqual([]);
  });

  it('is flagged when the warmest of 40, 32 and 36 °F creeps for days and its average raises no alarm', () => {
    const creep = (day: number): number => fahrenheit(3 + Math.max(0, Math.min(5, 0.6 * (day - 10))));
    const log = handMadeStore({
      days: 21,
      circuits: [
        { id: 'M01', probes: [creep, () => fahrenheit(-5), () => fahrenheit(-1)], limit: 20 / 3 },
        quiet('M02'),
        quiet('M03'),
      ],
    });
    const found = flags(log);
    expect(found.map(({ circuit, probe }) => [circuit, probe])).toEqual([['M01', 'M01 air A']]);
    expect(found[0]!.evidence.map((one) => one.shape)).toContain('creep');
    expect(Math.abs(found[0]!.onset - (startMs + 10 * dayMs))).toBeLessThan(1.5 * dayMs);
  });

  it('is flagged for a cut probe lead that raises no alarm: rejected rails leave silence beside living neighbours', () => {
    const cut = (day: number): number => (day < 12.5 ? 0 : Number.NaN);
    const log = handMadeStore({
      days: 21,
      circuits: [{ id: 'M01', probes: [still, cut, still] }, quiet('M02'), quiet('M03')],
    });
    const [finding, ...others] = flags(log);
    expect(others).toEqual([]);
    expect(finding).toMatchObject({
      kind: 'probe-disagreement',
      origin: 'probe',
      probe: 'M01 air B',
      onset: startMs + 12.5 * dayMs,
    });
    expect(finding!.causes[0]!.cause).toBe('probe-open-or-short');
  });

  it('is flagged for a cut probe lead whose rail was logged as if it were air', () => {
    const rail = (day: number): number => (day < 12.5 ? 0 : Number.NaN);
    const log = handMadeStore({
      days: 21,
      circuits: [{ id: 'M01', probes: [still, rail, still] }, quiet('M02'), quiet('M03')],
    });
    const { values } = log.circuits[0]!.probes[1]!.record;
    for (let i = 0; i < values.length; i++) if (Number.isNaN(values[i]!)) values[i] = -40;
    const [finding] = flags(log);
    expect(finding).toMatchObject({ probe: 'M01 air B', origin: 'probe' });
    expect(finding!.causes[0]!.cause).toBe('probe-open-or-short');
  });
});

describe('neighbours of one line-up', () => {
  it('stand within about 3 °F of each other when they are healthy: no flag', () => {
    const log = handMadeStore({
      days: 14,
      circuits: [
        { id: 'M01', probes: [() => fahrenheit(1.5), still, () => fahrenheit(-1.5)] },
        quiet('M02'),
        quiet('M03'),
      ],
    });
    expect(flags(log)).toEqual([]);
  });

  it('have a local fault when 10 °F lie between two places, even from the first day on', () => {
    const log = handMadeStore({
      days: 14,
      circuits: [
        { id: 'M01', probes: [() => fahrenheit(10), still, still, still] },
        quiet('M02'),
        quiet('M03'),
      ],
    });
    expect(flags(log).map(({ circuit, probe }) => [circuit, probe])).toEqual([['M01', 'M01 air A']]);
  });

  it('stay at a note when one has always read 2 °F off the others', () => {
    const log = handMadeStore({
      days: 14,
      circuits: [{ id: 'M01', probes: [() => fahrenheit(3.2), still, still] }, quiet('M02'), quiet('M03')],
    });
    const { findings } = diagnose(computeSignals(log));
    expect(findings.map(({ severity }) => severity)).toEqual(['note']);
    expect(findings[0]!.causes[0]!.cause).toBe('normal-variation');
  });
});

describe('after a service visit', () => {
  // A group near 50 psig pulled down to about 10 for a repair, every circuit shut: no rack fault. Afterwards each circuit
  // must be back on, and the set point back at its old value.
  const visited = (options: { readonly leftOff?: string; readonly target?: number }) => {
    const psig = (gauge: number): number => gauge * 6.894757 + 101.325;
    const inVisit = (day: number): boolean => day >= 8.4 && day < 8.5;
    const isOff = (id: string, day: number): boolean =>
      inVisit(day) || (day >= 8.5 && id === options.leftOff);
    const log = handMadeStore({
      days: 14,
      circuits: ['M01', 'M02', 'M03'].map((id) => ({
        ...quiet(id),
        together: (day) => (isOff(id, day) ? Math.min(15, 150 * (day - 8.4)) : 0),
        duty: (day) => (isOff(id, day) ? 0 : 0.5),
      })),
    });
    const curve = (point: string, gauge: (day: number) => number) => ({
      ...log.circuits[0]!.probes[0]!.record,
      point,
      quantity: 'pressure' as const,
      exportUnit: '[psi]',
      resolution: 0.69,
      values: Float64Array.from({ length: log.grid.count }, (_, i) =>
        psig(gauge(i / 288) + 0.5 * Math.sin(i / 3)),
      ),
    });
    const target = (day: number): number => (day < 8.5 ? 50 : (options.target ?? 50));
    const group = {
      ...log.suctionGroups[0]!,
      pressure: curve('S1 suction', (day) => (inVisit(day) ? 10 : target(day))),
      pressureSetPoint: {
        ...curve('S1 target', target),
        values: Float64Array.from({ length: log.grid.count }, (_, i) => psig(target(i / 288))),
      },
    };
    return diagnose(computeSignals({ ...log, suctionGroups: [group] })).findings;
  };

  it('with everything back there is nothing but the note of it', () => {
    expect(visited({}).map(({ severity, evidence }) => [severity, evidence[0]!.shape])).toEqual([
      ['note', 'service-visit'],
    ]);
  });

  it('a circuit that is not back on is the first thing to act on', () => {
    const [first] = visited({ leftOff: 'M02' });
    expect(first).toMatchObject({ kind: 'left-off', severity: 'act', circuit: 'M02', origin: 'control' });
  });

  it('a suction set point that is not back is on the list, and names the set point', () => {
    const left = visited({ target: 44 }).find(({ evidence }) => evidence[0]!.shape === 'target-left');
    expect(left).toMatchObject({ severity: 'watch', suctionGroup: 'S1', origin: 'control' });
    expect(left!.causes[0]!.cause).toBe('set-point');
  });
});

it('a level channel that reads 0.93 for ever is not connected: a note about the record', () => {
  const log = handMadeStore({ days: 14, circuits: [quiet('M01'), quiet('M02'), quiet('M03')] });
  const level = {
    ...log.circuits[0]!.probes[0]!.record,
    point: 'receiver level',
    quantity: 'fraction' as const,
    values: new Float64Array(log.grid.count).fill(0.0093),
  };
  const group = { ...log.suctionGroups[0]!, liquidLevel: level };
  const { findings } = diagnose(computeSignals({ ...log, suctionGroups: [group] }));
  expect(findings).toHaveLength(1);
  expect(findings[0]).toMatchObject({
    kind: 'record-quality',
    severity: 'note',
    origin: 'record',
    points: ['receiver level'],
  });
});
