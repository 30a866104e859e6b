import { type BlockReadings, type SettledReadings, settledReadings } from '../figures/block-readings.ts';
import { circuitFigures } from '../figures/circuit-figures.ts';
import { type ClockBlocks, clockBlocks } from '../figures/clock-blocks.ts';
import type { Figure } from '../figures/figure.ts';
import { groupReadings } from '../figures/group-figures.ts';
import { quietDaysOfCircuit, quietDaysOfGroup } from '../figures/quiet-days.ts';
import { singleParts } from '../maths/pooled-parts.ts';
import type { Finding } from '../model/finding.ts';
import type { Log } from '../model/log.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../signals/types.ts';
import type { EpochMs } from '../units/quantities.ts';
import type { Norm, OutdoorTie } from './norm.ts';
import { daysByType, type LearntDays, normCells } from './norm-cells.ts';
import { dailyOutdoor, outdoorRecord, outdoorTie } from './outdoor-tie.ts';
import { fewestDays, mostDays } from './settings.ts';

/** Figures whose level follows the weather. */
const tied: readonly Figure['id'][] = ['suction', 'discharge', 'liquid-level', 'duty'];

/** The norms of every circuit and suction group that has enough quiet days. */
export function learnNorms(signals: Signals, findings: readonly Finding[]): Norm[] {
  const learner = normLearner(signals, findings);
  return [
    ...signals.circuits.flatMap((circuit) =>
      learner.ofCircuit(circuit, settledReadings(circuit, learner.blocks)),
    ),
    ...learner.ofGroups(),
  ];
}

/** For who reads more than norms from the settled air of a circuit. */
export interface NormLearner {
  readonly blocks: ClockBlocks;
  ofCircuit(circuit: CircuitSignals, settled: SettledReadings): Norm[];
  ofGroups(): Norm[];
}

export function normLearner(signals: Signals, findings: readonly Finding[]): NormLearner {
  const { log } = signals;
  const blocks = clockBlocks(log);
  const record = outdoorRecord(log);
  const outdoor = record === null ? null : { point: record.point, days: dailyOutdoor(record, log) };
  const tieOf = (figure: Figure, learnt: readonly boolean[]): OutdoorTie | null =>
    tied.includes(figure.id) && outdoor !== null
      ? outdoorTie(figure.values, outdoor.days, outdoor.point, learnt)
      : null;
  return {
    blocks,
    ofCircuit: (circuit, settled) => circuitNorms(circuit, settled, findings, blocks, tieOf),
    ofGroups: () => signals.groups.flatMap((group) => groupNorms(group, findings, log, blocks, tieOf)),
  };
}

type TieOf = (figure: Figure, learnt: readonly boolean[]) => OutdoorTie | null;

function circuitNorms(
  signals: CircuitSignals,
  settled: SettledReadings,
  findings: readonly Finding[],
  blocks: ClockBlocks,
  tieOf: TieOf,
): Norm[] {
  const { circuit, log } = signals;
  const learnt = lastQuiet(quietDaysOfCircuit(signals, findings));
  const days = daysByType(log.calendar, learnt);
  const frozenSince = frozen(
    findings.filter((finding) => finding.circuit === circuit.id || finding.covers.includes(circuit.id)),
  );
  return circuitFigures(signals, blocks, settled.probes).flatMap((figure) => {
    const probe = figure.id === 'air' ? circuit.probes.findIndex(({ point }) => point === figure.point) : -1;
    return normOf(figure, settled.probes[probe] ?? singleParts(figure.values), days, {
      circuit: circuit.id,
      suctionGroup: circuit.suctionGroup,
      of: probe < 0 ? 'blocks' : 'readings',
      frozenSince,
      tie: tieOf(figure, learnt),
    });
  });
}

function groupNorms(
  signals: GroupSignals,
  findings: readonly Finding[],
  log: Log,
  blocks: ClockBlocks,
  tieOf: TieOf,
): Norm[] {
  const { group } = signals;
  const learnt = lastQuiet(quietDaysOfGroup(signals, findings, log));
  const days = daysByType(log.calendar, learnt);
  const own = findings.filter((finding) => finding.circuit === null && finding.suctionGroup === group.id);
  return groupReadings(group, log, blocks).flatMap(({ figure, readings }) =>
    normOf(figure, readings, days, {
      circuit: null,
      suctionGroup: group.id,
      of: 'readings',
      frozenSince: frozen(own),
      tie: tieOf(figure, learnt),
    }),
  );
}

function normOf(
  figure: Figure,
  readings: BlockReadings,
  days: LearntDays,
  rest: Pick<Norm, 'circuit' | 'suctionGroup' | 'of' | 'frozenSince' | 'tie'>,
): Norm[] {
  const quietDays = days.weekday.length + days.weekend.length;
  if (quietDays < fewestDays) return [];
  const cells = normCells(readings, days);
  return cells.length === 0 ? [] : [{ ...figure, ...rest, quietDays, cells }];
}

/** The last quiet days, at most as many as a norm is learnt from. */
function lastQuiet(quiet: readonly boolean[]): boolean[] {
  let left = mostDays;
  return quiet
    .toReversed()
    .map((isQuiet) => isQuiet && left-- > 0)
    .reverse();
}

/** While a finding stands at the end, nothing has been learnt since its onset. */
function frozen(findings: readonly Finding[]): EpochMs | null {
  const standing = findings.filter(({ severity, end }) => severity !== 'note' && end === null);
  return standing.length === 0 ? null : Math.min(...standing.map(({ onset }) => onset));
}
