import { median } from '../../maths/median.ts';
import { quantiles } from '../../maths/quantile.ts';
import type { Abstention, Evidence, Verdict } from '../../model/evidence.ts';
import { samplesIn, timeAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { Record } from '../../model/record.ts';
import type { GroupSignals, Signals } from '../../signals/types.ts';
import { abstention, groupSubject, knownFeatures, measure } from '../evidence-parts.ts';
import { airInStep } from './air-in-step.ts';
import { coSignals } from './co-signals.ts';
import { circuitsInStep, fewestValves } from './in-step.ts';
import { inferredRuns } from './inferred.ts';
import { type Judged, judgeMachine, visibleStarts } from './judge-machine.ts';
import { meta } from './meta.ts';
import { narrowedSwing } from './narrowed.ts';
import { onGroup } from './on-group.ts';
import { historyOf, runHistory } from './run-history.ts';
import { settings } from './settings.ts';

/** Of what is inferred from the pressure alone, at most this is certain. */
const inferredCertainty = 0.45;
/** Relative change of the suction pressure beyond which it no longer stands where it did. */
const levelWithin = 0.03;

/** Every compressor of a suction group; where no run status is logged, the group by its suction pressure. */
export function analyseCompressors(group: GroupSignals, site: Signals): Verdict {
  const { calendar } = site.log;
  if (calendar.days.length < meta.minimumDays) return { evidence: [], abstentions: [] };
  const inStep = valvesAreLogged(group, site) ? circuitsInStep(group, site) : airInStep(group, site);
  const { evidence, abstentions } = ofMachines(group, site);
  return { evidence: [...evidence, ...inStep], abstentions };
}

/** True where the valve of every circuit is, or those of two of them, which is enough to show a step. */
function valvesAreLogged({ members }: GroupSignals, { circuits }: Signals): boolean {
  const valves = circuits
    .filter(({ circuit }) => members.includes(circuit.id))
    .map(({ circuit }) => circuit.valve);
  const onOff = valves.filter((valve) => valve?.quantity === 'status');
  return onOff.length >= fewestValves || !valves.includes(null);
}

function ofMachines(group: GroupSignals, site: Signals): Verdict {
  const { grid, calendar } = site.log;
  if (group.group.compressors.length === 0) return fromPressure(group, site);
  const evidence: Evidence[] = [];
  const abstentions: Abstention[] = [];
  const limit = settings.compressorStarts.value;
  group.group.compressors.forEach((compressor, i) => {
    const visible = compressor.changes === null ? visibleStarts(grid.stepMs) : Number.POSITIVE_INFINITY;
    if (visible <= limit) abstentions.push(tooCoarse(compressor, group, grid.stepMs / 60_000));
    if (visible < 4) return;
    const history = runHistory(compressor, group.compressorSpells[i]!, grid);
    const judged = judgeMachine(history, compressor.values, limit, visible, grid, calendar);
    if (judged !== null) evidence.push(evidenceOf(judged, compressor, 'compressor', group, site));
  });
  const isCoarse = visibleStarts(grid.stepMs) <= limit;
  return { evidence: evidence.length > 0 || !isCoarse ? evidence : fromSwing(group, site), abstentions };
}

/** Where run status is logged too coarsely: the suction's swing narrowed and stayed so, while machines still stop. */
function fromSwing(group: GroupSignals, site: Signals): Evidence[] {
  const pressure = group.group.pressure;
  if (pressure === null) return [];
  const { log } = site;
  const least = Math.max(settings.tightBand.value / 2, 3 * pressure.resolution);
  const narrowed = narrowedSwing(hourSwings(pressure.values, log), least);
  if (narrowed === null || !stillRegulates(group, narrowed.day)) return [];
  return [
    {
      ...onGroup(group),
      probe: null,
      points: [pressure.point, ...group.group.compressors.map((record) => record.point)],
      onset: timeAt(log.grid, log.calendar.days[narrowed.day]!.from),
      end: null,
      certainty: inferredCertainty,
      measures: [
        measure('suctionSwing', narrowed.after, 'kPa'),
        measure('usualSuctionSwing', narrowed.before, 'kPa'),
      ],
      features: {
        suctionSwing: narrowed.after,
        suctionSwingRatio: narrowed.after / narrowed.before,
        coarse: 1,
      },
      shape: 'inferred',
    },
  ];
}

/** The level of the suction is what it was: with all machines running, or few, its swing narrows as well. */
function stillRegulates({ suction, suctionTarget }: GroupSignals, day: number): boolean {
  const above = suction.map((value, d) => Math.log(value / (suctionTarget[d]! || 1)));
  return Math.abs(median(above.subarray(day)) - median(above.subarray(0, day))) < levelWithin;
}

/** Median over the hours of a day of p10 to p90 within the hour. */
function hourSwings(values: Float64Array, { grid, calendar }: Log): Float64Array {
  const hour = samplesIn(grid, 60);
  return Float64Array.from(calendar.days, ({ from, to }) => {
    const swings: number[] = [];
    for (let k = from; k + hour <= to; k += hour) {
      const [low, high] = quantiles(values.subarray(k, k + hour), [0.1, 0.9]) as [number, number];
      swings.push(high - low);
    }
    return median(swings);
  });
}

function fromPressure(group: GroupSignals, site: Signals): Verdict {
  const { grid, calendar } = site.log;
  const pressure = group.group.pressure;
  const unseen = abstention(
    meta.id,
    groupSubject(group.group),
    pressure === null
      ? 'Neither the run status of a compressor nor the suction pressure is logged, so starts cannot be counted.'
      : 'No run status of a compressor is logged: starts are only inferred from the suction pressure.',
    'run status of each compressor',
  );
  if (pressure === null || visibleStarts(grid.stepMs) <= settings.inferredCycles.value)
    return { evidence: [], abstentions: [unseen] };
  const history = historyOf(inferredRuns(pressure.values, pressure.resolution, grid));
  const never = Number.MAX_VALUE;
  const judged = judgeMachine(history, pressure.values, never, Number.POSITIVE_INFINITY, grid, calendar);
  const isCycling = judged !== null && judged.period.rate > settings.inferredCycles.value;
  return {
    evidence: isCycling ? [evidenceOf(judged, pressure, 'inferred', group, site)] : [],
    abstentions: [unseen],
  };
}

function evidenceOf(
  judged: Judged,
  record: Record,
  shape: 'compressor' | 'inferred',
  group: GroupSignals,
  site: Signals,
): Evidence {
  const members = site.circuits.filter((one) => group.members.includes(one.circuit.id));
  return {
    ...onGroup(group),
    probe: record.point,
    points: [record.point, ...(group.group.pressure === null ? [] : [group.group.pressure.point])],
    onset: judged.onset,
    end: judged.end,
    certainty: shape === 'inferred' ? Math.min(judged.certainty, inferredCertainty) : judged.certainty,
    measures: judged.measures,
    features: knownFeatures({ ...judged.features, ...coSignals(judged.since, group, members) }),
    shape,
  };
}

function tooCoarse(record: Record, group: GroupSignals, minutes: number): Abstention {
  return abstention(
    meta.id,
    groupSubject(group.group),
    `${record.point} is logged every ${minutes} min: runs shorter than ${2 * minutes} min cannot be seen, and no ` +
      `more than ${30 / minutes} starts an hour.`,
    'run status logged at every change, or at least every 2 minutes',
  );
}
