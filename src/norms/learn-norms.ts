import { circuitFigures } from '../figures/circuit-figures.ts';
import { blockRuns, blocksADay, clockBlocks } from '../figures/clock-blocks.ts';
import type { Figure } from '../figures/figure.ts';
import { groupFigures, groupPoints } from '../figures/group-figures.ts';
import { quietDaysOfCircuit, quietDaysOfGroup } from '../figures/quiet-days.ts';
import { type PoolingRoom, poolingRoom } from '../maths/pooled-parts.ts';
import type { Finding } from '../model/finding.ts';
import type { Log } from '../model/log.ts';
import type { Record } from '../model/record.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../signals/types.ts';
import { Phase } from '../signals/types.ts';
import type { EpochMs } from '../units/quantities.ts';
import type { Norm, OutdoorTie } from './norm.ts';
import { normCells } from './norm-cells.ts';
import { dailyOutdoor, outdoorRecord, outdoorTie } from './outdoor-tie.ts';
import { fewestDays, mostDays } from './settings.ts';

/** Figures whose level follows the weather. */
const tied: readonly Figure['id'][] = ['suction', 'discharge', 'liquid-level', 'duty'];

/** The norms of every circuit and suction group that has enough quiet days. */
export function learnNorms(signals: Signals, findings: readonly Finding[]): Norm[] {
  const { log } = signals;
  const blocks = clockBlocks(log);
  const room = poolingRoom(Math.max(log.grid.count, log.calendar.days.length * blocksADay));
  const record = outdoorRecord(log);
  const outdoor = record === null ? null : { point: record.point, days: dailyOutdoor(record, log) };
  const tieOf = (figure: Figure, learnt: readonly boolean[]): OutdoorTie | null =>
    tied.includes(figure.id) && outdoor !== null
      ? outdoorTie(figure.values, outdoor.days, outdoor.point, learnt)
      : null;
  return [
    ...signals.circuits.flatMap((circuit) => circuitNorms(circuit, findings, blocks, tieOf, room)),
    ...signals.groups.flatMap((group) => groupNorms(group, findings, log, blocks, tieOf, room)),
  ];
}

type TieOf = (figure: Figure, learnt: readonly boolean[]) => OutdoorTie | null;

function circuitNorms(
  signals: CircuitSignals,
  findings: readonly Finding[],
  blocks: Int32Array,
  tieOf: TieOf,
  room: PoolingRoom,
): Norm[] {
  const { circuit, phase, log } = signals;
  const learnt = lastQuiet(quietDaysOfCircuit(signals, findings));
  const frozenSince = frozen(
    findings.filter((finding) => finding.circuit === circuit.id || finding.covers.includes(circuit.id)),
  );
  const settledBlocks = inSettledAir(quietBlocks(blocks, learnt), phase);
  return circuitFigures(signals, blocks).flatMap((figure) => {
    const probe =
      figure.id === 'air' ? circuit.probes.find(({ point }) => point === figure.point) : undefined;
    const placed =
      probe === undefined
        ? { values: figure.values, blocks: learntBlocks(figure.values, learnt), resolution: 0 }
        : { ...readingsOf(probe.record), blocks: settledBlocks };
    return normOf(figure, placed, learnt, log, room, {
      circuit: circuit.id,
      suctionGroup: circuit.suctionGroup,
      of: probe === undefined ? 'blocks' : 'readings',
      frozenSince,
      tie: tieOf(figure, learnt),
    });
  });
}

function groupNorms(
  signals: GroupSignals,
  findings: readonly Finding[],
  log: Log,
  blocks: Int32Array,
  tieOf: TieOf,
  room: PoolingRoom,
): Norm[] {
  const { group } = signals;
  const learnt = lastQuiet(quietDaysOfGroup(signals, findings, log));
  const own = findings.filter((finding) => finding.circuit === null && finding.suctionGroup === group.id);
  const learntFrom = quietBlocks(blocks, learnt);
  const points = groupPoints(group);
  return groupFigures(group, log, blocks).flatMap((figure, k) =>
    normOf(figure, { ...readingsOf(points[k]!.record), blocks: learntFrom }, learnt, log, room, {
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
  placed: Parameters<typeof normCells>[0],
  learnt: readonly boolean[],
  log: Log,
  room: PoolingRoom,
  rest: Pick<Norm, 'circuit' | 'suctionGroup' | 'of' | 'frozenSince' | 'tie'>,
): Norm[] {
  const quietDays = learnt.filter(Boolean).length;
  if (quietDays < fewestDays) return [];
  const cells = normCells(placed, log.calendar, room);
  return cells.length === 0 ? [] : [{ ...figure, ...rest, quietDays, cells }];
}

function readingsOf({ values, resolution }: Record) {
  return { values, resolution };
}

/** The last quiet days, at most as many as a norm is learnt from. */
function lastQuiet(quiet: readonly boolean[]): boolean[] {
  let left = mostDays;
  return quiet
    .toReversed()
    .map((isQuiet) => isQuiet && left-- > 0)
    .reverse();
}

/** Every value of a figure stands in its own block. */
function learntBlocks(values: Float64Array, learnt: readonly boolean[]): Int32Array {
  return Int32Array.from(values, (_, block) => (learnt[Math.floor(block / blocksADay)] ? block : -1));
}

/** The clock block of each sample, −1 on days that nothing is learnt from. */
function quietBlocks(blocks: Int32Array, learnt: readonly boolean[]): Int32Array {
  const quiet = blocks.slice();
  for (const { block, from, to } of blockRuns(blocks)) {
    if (!learnt[Math.floor(block / blocksADay)]) quiet.fill(-1, from, to);
  }
  return quiet;
}

/** Changes `blocks` in place: −1 outside settled air. */
function inSettledAir(blocks: Int32Array, phase: Uint8Array): Int32Array {
  for (let i = 0; i < blocks.length; i++) if (phase[i] !== Phase.cooling) blocks[i] = -1;
  return blocks;
}

/** While a finding stands at the end, nothing has been learnt since its onset. */
function frozen(findings: readonly Finding[]): EpochMs | null {
  const standing = findings.filter(({ severity, end }) => severity !== 'note' && end === null);
  return standing.length === 0 ? null : Math.min(...standing.map(({ onset }) => onset));
}
