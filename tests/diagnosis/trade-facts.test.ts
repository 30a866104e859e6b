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
