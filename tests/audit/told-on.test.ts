import { describe, expect, test } from 'vitest';
import { exampleStore } from '../../sample-logs/maker/examples.ts';
import { toLog } from '../../sample-logs/maker/to-log.ts';
import { signalsUntil } from '../../src/audit/cut-history.ts';
import { monthOf } from '../../src/audit/month.ts';
import { toldOn } from '../../src/audit/told-on.ts';
import { diagnose } from '../../src/diagnosis/diagnose.ts';
import type { Finding } from '../../src/model/finding.ts';
import { timeAt } from '../../src/model/grid.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';

/** Small stores and few days: each is analysed several times over. */
const store = { days: 18, mediumCircuits: 3, lowCircuits: 0 };
const logging = { logging: { intervalMinutes: 5 } };

function analysed(name: 'iced-end' | 'probe-creep' | 'probe-step' | 'left-off', seed: number) {
  const log = toLog(exampleStore(name, { ...store, seed }), logging);
  const signals = computeSignals(log);
  const diagnosis = diagnose(signals);
  const findings = diagnosis.findings.filter(
    ({ severity, circuit }) => severity !== 'note' && circuit !== null,
  );
  return { log, signals, diagnosis, month: monthOf(log, null)!, findings };
}

const isSame = (finding: Finding) => (other: Finding) =>
  other.kind === finding.kind &&
  other.circuit === finding.circuit &&
  other.probe === finding.probe &&
  other.severity !== 'note';

describe.each([
  ['iced-end', 11],
  ['probe-creep', 11],
  ['probe-step', 12],
  ['left-off', 12],
] as const)('%s, seed %i', (name, seed) => {
  const scope = analysed(name, seed);
  const [finding] = scope.findings;
  const { grid, calendar } = scope.log;
  /** The whole way from the cut log, hindsight in nothing. */
  const isFound = (day: number): boolean =>
    diagnose(computeSignals(signalsUntil(scope.signals, day).log)).findings.some(isSame(finding!));

  test('is told on the day on which a whole new analysis of what was logged until then tells it', () => {
    const told = toldOn(finding!, scope)!;
    const day = calendar.days.findIndex(({ to }) => timeAt(grid, to) === told);
    expect(day).toBeGreaterThanOrEqual(0);
    expect(told).toBeGreaterThan(finding!.onset);
    expect([isFound(day - 1), isFound(day)]).toEqual([false, true]);
  });
});

test('what creeps is told days after its onset, what steps within two', () => {
  const daysUntilTold = (name: 'iced-end' | 'probe-step') => {
    const scope = analysed(name, 11);
    const [finding] = scope.findings;
    return (toldOn(finding!, scope)! - finding!.onset) / 86_400_000;
  };
  expect(daysUntilTold('iced-end')).toBeGreaterThan(2);
  expect(daysUntilTold('probe-step')).toBeLessThanOrEqual(2);
});

test('nothing later is left in a cut history', () => {
  const { signals } = analysed('probe-step', 11);
  const cut = signalsUntil(signals, 6);
  const { count } = cut.log.grid;
  expect(count).toBe(signals.log.calendar.days[6]!.to);
  const lengths = new Set<number>();
  const look = (value: unknown): void => {
    if (value instanceof Float64Array || value instanceof Uint8Array) lengths.add(value.length);
    else if (Array.isArray(value)) value.forEach(look);
    else if (value instanceof Map) [...value.values()].forEach(look);
    else if (typeof value === 'object' && value !== null) Object.values(value).forEach(look);
  };
  look(cut.circuits.map(({ valveSpells: _, ...rest }) => rest));
  look(cut.groups.map(({ compressorSpells: _, ...rest }) => rest));
  expect([...lengths].sort((a, b) => a - b)).toEqual([7, count]);
  for (const { defrosts, valveSpells, slots } of cut.circuits) {
    expect(Math.max(0, ...defrosts.map(({ to }) => to), ...valveSpells.to)).toBeLessThanOrEqual(count);
    for (const slot of slots) expect([slot.expected, ...slot.due].every((at) => at <= count)).toBe(true);
  }
  for (const spells of cut.groups.flatMap(({ compressorSpells }) => compressorSpells)) {
    expect(spells.from.length).toBe(spells.count);
    expect(Math.max(0, ...spells.to)).toBeLessThanOrEqual(count);
  }
});
