import { type FaultName, faultCatalogue } from '../../sample-logs/maker/fault-catalogue.ts';
import { simulateLumped } from '../../sample-logs/maker/lumped-model/simulate.ts';
import { createRandom } from '../../sample-logs/maker/random.ts';
import { simulateSections } from '../../sample-logs/maker/section-model/simulate.ts';
import type { PlantedFault, SimulatedStore } from '../../sample-logs/maker/simulated-store.ts';
import type { Diagnosis, Finding } from '../../src/model/finding.ts';
import { firstAlarm } from './alarm.ts';
import { diagnoseCut, pointName } from './analyse.ts';
import type { CaseWishes, EvaluationCase } from './cases.ts';
import { firstFlagged } from './detection-time.ts';
import { saidHoursAfter } from './hours-after.ts';
import { falseFlags, findingFor, flaggedUnderRack, isFlag, speaksOf } from './match.ts';
import { type CaseOutcome, type FaultOutcome, summarise } from './outcome.ts';
import { forecastTrial, judgeProjection } from './projection.ts';

export interface RunOptions {
  /** `export` goes through the text and the importer, `log` builds the model log directly. */
  readonly through: 'export' | 'log';
  /** Whether to search for the moment of first detection (many more runs). */
  readonly lead: boolean;
  /** Hours after its onset at which the export is cut, to see what is said of the fault then. */
  readonly hours: readonly number[];
  /** What alone is planted, or null. Of `projection` each creep is forecast at a drawn cut instead of when it was 3 °F. */
  readonly only: CaseWishes['only'];
  /** Whether the stores log their return air. */
  readonly returnAir: boolean;
}

/** One store-month, start to end: simulate, diagnose, compare with the truth. */
export async function runCase(one: EvaluationCase, options: RunOptions): Promise<CaseOutcome> {
  const started = performance.now();
  const store = simulate(one);
  const simulated = performance.now();
  const { findings } = await diagnoseStore(store, one, options);
  const seconds = {
    simulate: (simulated - started) / 1000,
    pipeline: (performance.now() - simulated) / 1000,
  };
  const right = (finding: Finding): boolean =>
    store.truth.faults.some((fault) => speaksOf(finding, fault) && fault.origins.includes(finding.origin));
  const rackFault = store.truth.faults.find(({ circuit }) => circuit === null);
  const anyway = await flaggedAnyway(one, store, findings, options);
  const healthy = store.circuits.filter(
    ({ id, group }) =>
      !store.truth.faults.some((fault) => fault.circuit === id) && rackFault?.suctionGroup !== group,
  );
  return {
    ...heading(one),
    faults: store.truth.faults.map((fault) => outcomeOf(fault, store, one, findings, right, anyway, options)),
    lookAlikes: store.truth.lookAlikes.map(({ what }) => what),
    falseFlags: falseFlags(findings, store).map((finding) => summarise(finding, false)),
    healthyCircuits: healthy.length,
    flags: findings.filter(isFlag).map((finding) => summarise(finding, right(finding))),
    seconds,
    error: null,
  };
}

/** Of the flags on circuits under a rack fault those on circuits that are flagged without it, too; null where there are none. */
async function flaggedAnyway(
  one: EvaluationCase,
  store: SimulatedStore,
  findings: readonly Finding[],
  options: RunOptions,
): Promise<number | null> {
  const rackFault = store.truth.faults.find(({ circuit }) => circuit === null);
  const under = rackFault === undefined ? [] : flaggedUnderRack(findings, store, rackFault);
  if (under.length === 0) return null;
  const sound = simulate({ ...one, request: { ...one.request, faults: [] } });
  const flagged = (await diagnoseStore(sound, one, options)).findings.filter(isFlag);
  return under.filter(({ circuit }) => flagged.some((other) => other.circuit === circuit)).length;
}

function simulate({ simulator, request }: EvaluationCase): SimulatedStore {
  return (simulator === 'one' ? simulateSections : simulateLumped)(request);
}

function heading({ seed, simulator, dialect }: EvaluationCase) {
  return {
    seed,
    simulator,
    dialect: `${dialect.layout} ${dialect.time} ${dialect.logging.temperature}`,
    intervalMinutes: dialect.logging.intervalMinutes,
    temperatureStep: `${dialect.logging.temperatureStep} ${dialect.logging.temperature}`,
  };
}

/** What stands for a case whose run broke. */
export function failedCase(one: EvaluationCase, problem: unknown): CaseOutcome {
  return {
    ...heading(one),
    faults: [],
    lookAlikes: [],
    falseFlags: [],
    healthyCircuits: 0,
    flags: [],
    seconds: { simulate: 0, pipeline: 0 },
    error: problem instanceof Error ? (problem.stack ?? problem.message) : String(problem),
  };
}

async function diagnoseStore(
  store: SimulatedStore,
  one: EvaluationCase,
  options: RunOptions,
): Promise<Diagnosis> {
  if (options.through === 'log') return diagnoseCut(store, one.dialect, Number.POSITIVE_INFINITY);
  const { diagnoseExport } = await import('./through-export.ts');
  return diagnoseExport(store, one.dialect);
}

/** Faults whose cycles take three to six minutes (mild ones five to eight): two readings a cycle are the least that shows them. */
const cycling = new Set([
  'compressor-short-cycle',
  'low-pressure-trips',
  'valve-short-cycle',
  'circuits-in-step',
]);

function outcomeOf(
  fault: PlantedFault,
  store: SimulatedStore,
  { dialect, seed }: EvaluationCase,
  findings: readonly Finding[],
  right: (finding: Finding) => boolean,
  anyway: number | null,
  options: RunOptions,
): FaultOutcome {
  const circuit = store.circuits.find(({ id }) => id === fault.circuit);
  const meaning = faultCatalogue[fault.fault as FaultName];
  const finding = findingFor(findings, fault);
  const about = findings.filter((other) =>
    meaning.scope === 'group'
      ? other.suctionGroup === fault.suctionGroup && other.circuit === null
      : other.circuit === fault.circuit,
  );
  const cut = (untilMs: number): Diagnosis => diagnoseCut(store, dialect, untilMs);
  const endMs = store.startMs + store.count * store.stepMs;
  const early = fault.reachedThree === null ? null : findingFor(cut(fault.reachedThree).findings, fault);
  const creeps = meaning.sized && meaning.shape === 'creep';
  const forecast = (): Pick<FaultOutcome, 'projection' | 'undated'> => {
    if (!creeps || fault.reachedThree === null) return { projection: null, undated: [] };
    if (options.only !== 'projection')
      return { projection: judgeProjection(early, fault, store, dialect, fault.reachedThree), undated: [] };
    const random = createRandom(seed).branch(`forecast ${fault.circuit}`);
    const { outcome, undated } = forecastTrial(fault, store, dialect, random, cut);
    return { projection: outcome, undated };
  };
  return {
    fault,
    probePoint:
      circuit === undefined || fault.probe === null ? null : pointName(circuit.air[fault.probe]!, dialect),
    probes: circuit?.air.length ?? 0,
    visible:
      !cycling.has(fault.fault) || dialect.logging.intervalMinutes <= (fault.strength === 'mild' ? 2 : 1),
    finding: finding === null ? null : summarise(finding, right(finding)),
    said: about.map((other) => summarise(other, right(other))),
    early: fault.reachedThree === null ? null : early !== null,
    flaggedAt: options.lead && creeps && finding !== null ? firstFlagged(fault, endMs, cut) : null,
    hoursAfter: saidHoursAfter(fault, options.hours, endMs, cut),
    alarms:
      circuit === undefined || !meaning.sized
        ? null
        : {
            inForce: firstAlarm(store, circuit, 'average', circuit.limits.minutes, fault.onset),
            singleProbe: firstAlarm(store, circuit, fault.probe ?? 0, 60, fault.onset),
          },
    flaggedUnderRack: meaning.scope === 'group' ? flaggedUnderRack(findings, store, fault).length : null,
    flaggedAnyway: meaning.scope === 'group' ? anyway : null,
    ...forecast(),
  };
}
