import { median } from '../../maths/median.ts';
import type { Evidence, Verdict } from '../../model/evidence.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { abstention, circuitSubject, knownFeatures } from '../evidence-parts.ts';
import { type Judged, judgeMachine, visibleStarts } from './judge-machine.ts';
import { meta } from './meta.ts';
import { runHistory } from './run-history.ts';
import { settings } from './settings.ts';

/** The on/off valve of a circuit. */
export function analyseValve(signals: CircuitSignals): Verdict {
  const { circuit, log } = signals;
  const valve = circuit.valve;
  if (valve === null || valve.quantity !== 'status') return { evidence: [], abstentions: [] };
  if (log.calendar.days.length < meta.minimumDays) return { evidence: [], abstentions: [] };
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
  const runs = runHistory(valve, signals.valveSpells, log.grid);
  const judged = judgeMachine(runs, valve.values, limit, visible, log.grid, log.calendar);
  return { evidence: judged === null ? [] : [evidenceOf(judged, signals)], abstentions };
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
