import { circuitFigures } from '../figures/circuit-figures.ts';
import { clockBlocks } from '../figures/clock-blocks.ts';
import type { Finding } from '../model/finding.ts';
import type { Signals } from '../signals/types.ts';
import type { EpochMs } from '../units/quantities.ts';
import { type LeftOpen, leftOpen } from './back-on.ts';
import { judgeFigure, type RepairMeasure } from './judge-figure.ts';
import { referenceBlocks } from './reference.ts';
import { judgedShare } from './settings.ts';
import { type RepairWindows, repairWindows } from './windows.ts';

export type RepairVerdict = 'recovered' | 'partly' | 'unchanged' | 'too-early';

export interface RepairCheck {
  readonly circuit: string;
  readonly serviced: EpochMs;
  readonly verdict: RepairVerdict;
  /** Why it is too early, where it is. */
  readonly tooEarly: string | null;
  readonly windows: RepairWindows;
  readonly measures: readonly RepairMeasure[];
  /** The measures that the verdict rests on, the worst before the visit first. */
  readonly judged: readonly RepairMeasure[];
  readonly relapsed: boolean;
  /** Measures that were no trouble before the visit and are since, the worst first. */
  readonly newTroubles: readonly RepairMeasure[];
  readonly leftOpen: readonly LeftOpen[];
}

/**
 * Whether a repair held. What stood out before the visit is looked at after it, at the same hours of the day and in
 * the same phase; the verdict is that of the worst of it, and no better than the rest of it. Throws a RangeError for
 * a circuit that the log does not have.
 */
export function checkRepair(
  signals: Signals,
  findings: readonly Finding[],
  circuitId: string,
  serviced: EpochMs,
): RepairCheck {
  const own = signals.circuits.find(({ circuit }) => circuit.id === circuitId);
  if (own === undefined) throw new RangeError(`This log has no circuit ${circuitId}.`);
  const blocks = clockBlocks(signals.log);
  const windows = repairWindows(own, blocks.of, serviced);
  const past = findings.filter(({ onset }) => onset < serviced);
  const reference = referenceBlocks(own, past, windows.before);
  const measures = circuitFigures(own, blocks)
    .map((figure) => judgeFigure(figure, { ...windows, reference }))
    .filter((measure) => measure !== null);
  const judged = judgedMeasures(measures);
  const relapsed = judged.some((measure) => measure.relapsed);
  return {
    circuit: circuitId,
    serviced,
    verdict: windows.tooEarly === null ? verdictOf(judged, relapsed) : 'too-early',
    tooEarly: windows.tooEarly,
    windows,
    measures,
    judged,
    relapsed,
    newTroubles:
      windows.tooEarly === null
        ? measures.filter(({ newTrouble }) => newTrouble > 0).sort((a, b) => b.newTrouble - a.newTrouble)
        : [],
    leftOpen: leftOpen(signals, findings, serviced),
  };
}

/** Those in trouble before the visit; lesser ones only while they come near the worst. */
function judgedMeasures(measures: readonly RepairMeasure[]): RepairMeasure[] {
  const troubled = measures.filter(({ state }) => state !== null).sort((a, b) => b.trouble - a.trouble);
  const worst = troubled[0]?.trouble ?? 0;
  return troubled.filter(({ trouble }) => trouble >= judgedShare * worst);
}

function verdictOf(judged: readonly RepairMeasure[], relapsed: boolean): RepairVerdict {
  const [lead, ...others] = judged;
  if (lead === undefined) return 'unchanged';
  if (lead.state === 'unchanged') return relapsed ? 'partly' : 'unchanged';
  const isWhole = lead.state === 'recovered' && others.every(({ isBack }) => isBack);
  return isWhole && !relapsed ? 'recovered' : 'partly';
}
