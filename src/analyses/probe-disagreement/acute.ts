import { median } from '../../maths/median.ts';
import { normalConsistency } from '../../maths/median-absolute-deviation.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { offsetBlocks } from './offset-blocks.ts';
import { settings } from './settings.ts';

/** A change of hours that the record still shows at its end. Samples, half open. */
export interface Acute {
  readonly from: number;
  readonly to: number;
  readonly shift: number;
  /** Share of the neighbours against whom it stands when each is taken alone. */
  readonly votes: number;
}

const blockMinutes = 60;
const leastHistoryBlocks = 48;
const scalesOfNoise = 5;
/** Time that the change may be old; older ones are seen on daily medians. */
const longestHours = 60;

/**
 * A probe that left its neighbours within the last hours or days: hourly offsets in settled air against the
 * same probe's own earlier ones. The whole stretch to the end must stand out, not one hour of it, so that an
 * opened door or a stocking is over before it is reported.
 */
export function acuteChange(signals: CircuitSignals, probe: number, peers: readonly number[]): Acute | null {
  const run = terminalRun(signals, probe, peers);
  if (run === null) return null;
  if (peers.length === 1) return run;
  const agreeing = peers.filter((peer) => {
    const alone = terminalRun(signals, probe, [peer]);
    return alone !== null && alone.shift * run.shift > 0;
  });
  const votes = agreeing.length / peers.length;
  return votes >= settings.voteShare.value ? { ...run, votes } : null;
}

function terminalRun(signals: CircuitSignals, probe: number, peers: readonly number[]): Acute | null {
  const { samplesPerBlock, values } = offsetBlocks(signals, probe, peers, blockMinutes);
  const known: number[] = [];
  for (let block = 0; block < values.length; block++) if (Number.isFinite(values[block]!)) known.push(block);
  const earlier = known.filter((block) => block < values.length - longestHours);
  if (earlier.length < leastHistoryBlocks) return null;
  const usual = Float64Array.from(earlier, (block) => values[block]!);
  const centre = median(usual);
  const scale = normalConsistency * median(usual.map((value) => Math.abs(value - centre)));
  const least = Math.max(settings.acuteShift.value, scalesOfNoise * scale);
  let first = known.length;
  while (first > 0) {
    const departure = values[known[first - 1]!]! - centre;
    const sign = Math.sign(values[known.at(-1)!]! - centre);
    if (departure * sign < least / 2) break;
    first--;
  }
  const run = known.slice(first);
  if (run.length * (blockMinutes / 60) < settings.acuteHours.value) return null;
  if (values.length - run[0]! > longestHours) return null;
  const shift = median(run.map((block) => values[block]!)) - centre;
  if (Math.abs(shift) < least) return null;
  return { from: run[0]! * samplesPerBlock, to: signals.log.grid.count, shift, votes: 1 };
}
