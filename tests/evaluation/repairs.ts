import { exampleStore } from '../../sample-logs/maker/examples.ts';
import type { FaultName } from '../../sample-logs/maker/fault-catalogue.ts';
import type { SimulatedPoint, SimulatedStore } from '../../sample-logs/maker/simulated-store.ts';
import { toLog } from '../../sample-logs/maker/to-log.ts';
import { diagnose } from '../../src/diagnosis/diagnose.ts';
import { wilsonInterval } from '../../src/maths/wilson-interval.ts';
import { checkRepair, type RepairVerdict } from '../../src/repair-check/check-repair.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';

/**
 * `npx tsx tests/evaluation/repairs.ts [SEEDS] [one|two]`: months with a fault from day 8 on that a visit on day 18 repairs (the
 * same store without the fault is put in from then on) or does not, logged every 5 minutes.
 */
const faults: readonly FaultName[] = [
  'iced-end',
  'fan-failed',
  'underfeed',
  'probe-step',
  'probe-creep',
  'probe-moved',
  'recovery-lengthening',
];
const serviced = Math.round(18.45 * 1440);
const seeds = Number(process.argv[2] ?? '6');
const simulator = process.argv[3] === 'two' ? 'two' : 'one';

function pointsOf(store: SimulatedStore): SimulatedPoint[] {
  return [
    ...store.circuits.flatMap(({ air, others }) => [...air, ...others]),
    ...store.groups.flatMap(({ points }) => points),
  ];
}

/** From the visit on the store lives as it would have without the fault. */
function repair(faulty: SimulatedStore, healthy: SimulatedStore): SimulatedStore {
  const repaired = structuredClone(faulty);
  const sound = pointsOf(healthy);
  pointsOf(repaired).forEach((point, k) => {
    point.values.set(sound[k]!.values.subarray(serviced), serviced);
  });
  return repaired;
}

function verdictOn(store: SimulatedStore): RepairVerdict {
  const log = toLog(store, { logging: { intervalMinutes: 5 } });
  const signals = computeSignals(log);
  const { findings } = diagnose(signals);
  return checkRepair(signals, findings, 'M01', log.grid.startMs + serviced * 60_000).verdict;
}

const counts = new Map<string, number>();
const count = (key: string): number => counts.set(key, (counts.get(key) ?? 0) + 1).get(key)!;
for (let seed = 1; seed <= seeds; seed++) {
  const options = { seed: 500 + seed, simulator, mediumCircuits: 2, lowCircuits: 0, days: 26 } as const;
  const healthy = exampleStore('healthy', options);
  for (const fault of faults) {
    const faulty = exampleStore('healthy', { ...options, faults: [{ fault, on: 'M01', onsetDay: 8 }] });
    count(`${fault}: repaired, called ${verdictOn(repair(faulty, healthy))}`);
    const unrepaired = verdictOn(faulty);
    count(`${fault}: unrepaired, called ${unrepaired}`);
    if (unrepaired === 'recovered') count('false recovered');
  }
  if (verdictOn(healthy) === 'recovered') count('false recovered');
}
const visits = seeds * (faults.length + 1);
const wrong = counts.get('false recovered') ?? 0;
for (const [key, number] of [...counts].sort(([a], [b]) => (a < b ? -1 : 1)))
  process.stdout.write(`${key}: ${number}\n`);
const { high } = wilsonInterval(wrong, visits);
process.stdout.write(
  `Falsely called recovered: ${wrong} of ${visits} visits that repaired nothing (95 %: below ${(100 * high).toFixed(1)} %)\n`,
);
