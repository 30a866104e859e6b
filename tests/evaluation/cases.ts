import type { Dialect } from '../../sample-logs/maker/export/dialect.ts';
import { drawDialect } from '../../sample-logs/maker/export/dialects.ts';
import {
  type FaultName,
  faultCatalogue,
  faultNames,
  type LookAlikeName,
  lookAlikeNames,
} from '../../sample-logs/maker/fault-catalogue.ts';
import { createRandom, type Random } from '../../sample-logs/maker/random.ts';
import type { FaultRequest, StoreRequest } from '../../sample-logs/maker/store-request.ts';

/** Seeds for tuning, and the fixed ones that are never looked at while a threshold is chosen. */
export const seedSets = {
  tuning: { first: 1, last: 4999 },
  holdout: { first: 5000, last: 5099 },
} as const;
export type SeedSet = keyof typeof seedSets;

export interface EvaluationCase {
  readonly seed: number;
  readonly simulator: 'one' | 'two';
  readonly request: StoreRequest;
  readonly dialect: Dialect;
}

export interface CaseWishes {
  readonly set: SeedSet;
  readonly stores: number;
  /** Seeds of the set that are left out at its start; 0 when not given. */
  readonly skip?: number;
  /** One fault, `healthy`, or `projection`: creeps that go far past their limit. */
  readonly only: FaultName | 'healthy' | 'projection' | null;
  readonly simulator: 'one' | 'two' | null;
  /** Whether every store logs its return air, too; in the dialects as drawn none does. */
  readonly returnAir?: boolean;
}

/** Stores whose suction set points float. */
const floatingShare = 0.4;

/** Planted only where it is asked for, so that the mix of faults by seed stays what it was when the figures of docs/evaluation.md were made. */
const notInTheMix: readonly FaultName[] = ['low-charge', 'door-ajar', 'local-leak'];
const circuitFaults = faultNames.filter(
  (fault) => faultCatalogue[fault].scope !== 'group' && !notInTheMix.includes(fault),
);
const groupFaults = faultNames.filter(
  (fault) => faultCatalogue[fault].scope === 'group' && !notInTheMix.includes(fault),
);

/** The store-months of one evaluation; the same wishes give the same list. */
export function evaluationCases(wishes: CaseWishes): EvaluationCase[] {
  const { set, stores, skip = 0, only, simulator } = wishes;
  const { last } = seedSets[set];
  const first = seedSets[set].first + skip;
  if (stores > last - first + 1)
    throw new Error(`The ${set} set has ${last - first + 1} seeds from ${first} on, not ${stores}.`);
  return Array.from({ length: stores }, (_, i) => {
    const seed = first + i;
    const random = createRandom(seed).branch('evaluation');
    return {
      seed,
      simulator: simulator ?? (seed % 2 === 1 ? 'one' : 'two'),
      request: storeRequest(seed, i, only, random),
      dialect: dialectFor(seed, wishes),
    };
  });
}

function storeRequest(seed: number, i: number, only: CaseWishes['only'], random: Random): StoreRequest {
  const base = {
    seed,
    days: random.pick([14, 21, 30, 30, 30]),
    startDate: '2026-06-01',
    mediumCircuits: 6,
    lowCircuits: 3,
    floating: only === 'float-frozen' || createRandom(seed).branch('floating').chance(floatingShare),
  };
  const alike = (count: number): LookAlikeName[] => shuffled(lookAlikeNames, random).slice(0, count);
  if (only === 'healthy') return { ...base, lookAlikes: alike(4) };
  if (only === 'projection') return { ...base, ...farCreeps(random) };
  if (only !== null) return { ...base, faults: [fault(only, random)], lookAlikes: alike(1) };
  // Of eight stores two are healthy, two have a fault of the rack and four have three faults on three circuits.
  switch (i % 8) {
    case 0:
    case 5:
      return { ...base, lookAlikes: alike(4) };
    case 2:
    case 7: {
      const name = groupFaults[Math.floor(i / 4) % groupFaults.length]!;
      return {
        ...base,
        floating: base.floating || name === 'float-frozen',
        faults: [fault(name, random)],
        lookAlikes: alike(1),
      };
    }
    default: {
      const turn = Math.floor(i / 8) * 4 + [0, 0, 0, 1, 2, 0, 3][i % 8]!;
      const three = [0, 1, 2].map((k) => circuitFaults[(turn * 3 + k) % circuitFaults.length]!);
      return {
        ...base,
        faults: three.map((name) => fault(name, random)),
        lookAlikes: alike(1).filter((what) => what !== 'service-visit'),
      };
    }
  }
}

/**
 * Two creeps in two months, slow and fast, that go past their limit or stop short of it, gathering or slowing down: for the
 * projection and for the lead over the alarms, which need more than a month to be seen through.
 */
function farCreeps(random: Random): Partial<StoreRequest> {
  const creeps = shuffled(creepingFaults, random).slice(0, 2);
  return {
    days: 60,
    mediumCircuits: 5,
    lowCircuits: 0,
    faults: creeps.map((name) => ({
      fault: name,
      onsetDay: random.between(7, 20),
      size: random.between(6, 16),
      overDays: random.between(12, 40),
      bend: random.between(0.7, 1.5),
    })),
  };
}

const creepingFaults = ['iced-end', 'airflow-blocked', 'circuit-drift', 'probe-creep', 'underfeed'] as const;

function fault(name: FaultName, random: Random): FaultRequest {
  return { fault: name, strength: random.chance(0.4) ? 'mild' : 'full' };
}

function shuffled<T>(items: readonly T[], random: Random): T[] {
  const order = items.map((item) => ({ item, key: random.next() }));
  return order.sort((a, b) => a.key - b.key).map(({ item }) => item);
}

function dialectOf(seed: number): Dialect {
  return drawDialect(createRandom(seed).branch('evaluation').branch('dialect'));
}

/** Far creeps are looked at by the day, at many cuts: what is logged every 5 minutes shows them as well and runs four times as fast. */
function dialectFor(
  seed: number,
  { only, returnAir = false }: Pick<CaseWishes, 'only' | 'returnAir'>,
): Dialect {
  const plain = dialectOf(seed);
  const drawn = returnAir
    ? { ...plain, without: plain.without.filter((role) => role !== 'return-air') }
    : plain;
  return only === 'projection' ? { ...drawn, logging: { ...drawn.logging, intervalMinutes: 5 } } : drawn;
}

/** The case with its dialect drawn again, after a journey that functions do not survive. */
export function rebuildDialect(
  one: EvaluationCase,
  wishes: Pick<CaseWishes, 'only' | 'returnAir'>,
): EvaluationCase {
  return { ...one, dialect: dialectFor(one.seed, wishes) };
}
