import { median } from '../../maths/median.ts';
import { normalConsistency } from '../../maths/median-absolute-deviation.ts';
import { blocksPerHour, type OffsetTable } from './offset-table.ts';
import { settings } from './settings.ts';

/** A change of hours that the record still shows at its end. Samples, half open. */
export interface Acute {
  readonly from: number;
  readonly to: number;
  readonly shift: number;
  /** Share of the neighbours against whom it stands when each is taken alone. */
  readonly votes: number;
}

/** So much settled air, of a day and a night, has to show what is usual before. */
const leastHistoryHours = 16;
const scalesOfNoise = 5;
/** Time that the change may be old: older ones are seen on daily medians; nor half of a short history. */
const longestHours = 60;
const longestShare = 0.5;

/**
 * A probe that left its neighbours within the last hours or days: half-hourly offsets in settled air against the
 * same probe's own earlier ones. The whole stretch to the end must stand out, not one hour of it, so that an
 * opened door or a stocking is over before it is reported.
 */
export function acuteChange(table: OffsetTable, probe: number, peers: readonly number[]): Acute | null {
  if (table.mostApart(probe, peers) < settings.acuteShift.value) return null;
  const run = terminalRun(table, probe, peers);
  if (run === null) return null;
  if (peers.length === 1) return run;
  const agreeing = peers.filter((peer) => {
    const alone = terminalRun(table, probe, [peer]);
    return alone !== null && alone.shift * run.shift > 0;
  });
  const votes = agreeing.length / peers.length;
  return votes >= settings.voteShare.value ? { ...run, votes } : null;
}

function terminalRun(table: OffsetTable, probe: number, peers: readonly number[]): Acute | null {
  const values = table.offset(probe, peers);
  const longest = Math.min(longestHours * blocksPerHour, Math.floor(longestShare * values.length));
  const earlier = values.length - longest;
  const usual = values.subarray(0, earlier).filter(Number.isFinite);
  if (usual.length < leastHistoryHours * blocksPerHour) return null;
  const centre = median(usual);
  const scale = normalConsistency * median(usual.map((value) => Math.abs(value - centre)));
  const least = Math.max(settings.acuteShift.value, scalesOfNoise * scale);
  const run = lastDepartures(values, centre, least / 2);
  if (run.length / blocksPerHour < settings.acuteHours.value) return null;
  const first = run.at(-1)!;
  if (first < earlier) return null;
  const shift = median(run.map((block) => values[block]!)) - centre;
  if (Math.abs(shift) < least) return null;
  return {
    from: first * table.samplesPerBlock,
    to: values.length * table.samplesPerBlock,
    shift,
    votes: 1,
  };
}

/** The known blocks at the end that all stand `least` or more to one side of `centre`, latest first. */
function lastDepartures(values: Float64Array, centre: number, least: number): number[] {
  const run: number[] = [];
  let side = 0;
  for (let block = values.length - 1; block >= 0; block--) {
    const departure = values[block]! - centre;
    if (!Number.isFinite(departure)) continue;
    if (side === 0) side = Math.sign(departure);
    if (departure * side < least) break;
    run.push(block);
  }
  return run;
}
