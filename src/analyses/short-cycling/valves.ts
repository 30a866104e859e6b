import { median } from '../../maths/median.ts';
import type { Evidence, Verdict } from '../../model/evidence.ts';
import { timeAt } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import type { EpochMs } from '../../units/quantities.ts';
import { abstention, circuitSubject, knownFeatures, measure } from '../evidence-parts.ts';
import { airSwing, leastSwing } from './air-swing.ts';
import { fasterAir } from './faster-air.ts';
import { type Judged, judgeMachine, visibleStarts } from './judge-machine.ts';
import { meta } from './meta.ts';
import { narrowedSwing } from './narrowed.ts';
import { minutesOf, type Run, runHistory } from './run-history.ts';
import { settings } from './settings.ts';

/** Of what is inferred from the air alone, at most this is certain. */
const inferredCertainty = 0.6;

/** The on/off valve of a circuit; where none is logged, its air. */
export function analyseValve(signals: CircuitSignals): Verdict {
  const { circuit, log } = signals;
  const valve = circuit.valve;
  if (log.calendar.days.length < meta.minimumDays) return { evidence: [], abstentions: [] };
  if (valve === null) return { evidence: fasterAir(signals), abstentions: [] };
  if (valve.quantity !== 'status') return { evidence: [], abstentions: [] };
  const limit = settings.valveStarts.value;
  const visible = valve.changes === null ? visibleStarts(log.grid.stepMs) : Number.POSITIVE_INFINITY;
  const minutes = log.grid.stepMs / 60_000;
  const abstentions =
    visible > limit
      ? []
      : [
          abstention(
            meta.id,
            circuitSubject(circuit),
            `${valve.point} is logged every ${minutes} min: openings shorter than ${2 * minutes} min cannot be seen.`,
            'valve state logged at every change, or at least every 2 minutes',
          ),
        ];
  if (visible < 4) return { evidence: [], abstentions };
  const history = runHistory(valve, signals.valveSpells, log.grid);
  const judged = judgeMachine(history, valve.values, limit, visible, log.grid, log.calendar);
  const isByNorm = judged !== null && judged.period.rate <= limit;
  if (
    isByNorm &&
    (hardlyShut(history.runs(), judged.onset) || swings(judged, signals).airSwingRatio! > widerSwing)
  )
    return { evidence: [], abstentions };
  if (judged !== null) return { evidence: [evidenceOf(judged, signals)], abstentions };
  return { evidence: visible > limit ? [] : fromSwing(signals), abstentions };
}

/** Share of the time, defrosts counted in. */
const nearlyAlways = 0.8;

/**
 * Starts go with duty × (1 − duty) at one differential: a valve that feeds half of the time opens more often than one that
 * feeds nearly all of it. A differential that became too tight narrows the swing of the air; where that is wider by this
 * ratio, the coil only works faster.
 */
const widerSwing = 1.1;

/** A valve that had hardly ever shut has no norm of starts: with more capacity, or less load, it begins to cycle. */
function hardlyShut(runs: readonly Run[], onset: EpochMs): boolean {
  const before = runs.filter(({ end }) => end <= onset);
  const minutes = (some: readonly Run[]) => some.reduce((sum, run) => sum + minutesOf(run), 0);
  return minutes(before.filter(({ on }) => on)) > nearlyAlways * minutes(before);
}

/** The valve still works part of the time, so a narrower swing of the air is its doing. */
const workingDuty = [0.1, 0.85] as const;
/** … and no more of it than this beyond what it did while the air swung wide: a circuit short of cooling swings less as well. */
const dutyRise = 0.2;
/** Where the valve is logged too coarsely: the air's swing narrowed while the valve still opens and shuts. */
function fromSwing(signals: CircuitSignals): Evidence[] {
  const { circuit, duty, log } = signals;
  const narrowed = narrowedSwing(airSwing(signals), leastSwing(signals));
  const now = median(duty.subarray(-3));
  if (narrowed === null || !(now > workingDuty[0] && now < workingDuty[1])) return [];
  if (now > median(duty.subarray(0, narrowed.usualDays)) + dutyRise) return [];
  const before = narrowed.before;
  return [
    {
      analysis: meta.id,
      kind: 'short-cycling',
      circuit: circuit.id,
      suctionGroup: circuit.suctionGroup,
      probe: circuit.valve!.point,
      points: [circuit.valve!.point, ...circuit.probes.map((probe) => probe.point)],
      onset: timeAt(log.grid, log.calendar.days[narrowed.day]!.from),
      end: null,
      certainty: inferredCertainty,
      measures: [measure('airSwing', narrowed.after, 'K'), measure('usualAirSwing', before, 'K')],
      features: knownFeatures({
        airSwing: narrowed.after,
        airSwingRatio: narrowed.after / before,
        coarse: 1,
      }),
      shape: 'valve-inferred',
    },
  ];
}

function evidenceOf(judged: Judged, signals: CircuitSignals): Evidence {
  const { circuit } = signals;
  const points = [circuit.valve!.point, ...circuit.probes.map((probe) => probe.point)];
  return {
    analysis: meta.id,
    kind: 'short-cycling',
    circuit: circuit.id,
    suctionGroup: circuit.suctionGroup,
    probe: circuit.valve!.point,
    points,
    onset: judged.onset,
    end: judged.end,
    certainty: judged.certainty,
    measures: judged.measures,
    features: knownFeatures({ ...judged.features, ...swings(judged, signals) }),
    shape: 'valve',
  };
}

/** The air's swing before and since: it shrinks with a differential that was set too tight. */
function swings(judged: Judged, { probes, log }: CircuitSignals): { [name: string]: number } {
  const day = log.calendar.days.findIndex(
    (one) => log.grid.startMs + one.to * log.grid.stepMs > judged.onset,
  );
  const before = median(probes.map((probe) => median(probe.swing.subarray(0, day))));
  const since = median(probes.map((probe) => median(probe.swing.subarray(day))));
  return { airSwing: since, airSwingRatio: since / before };
}
