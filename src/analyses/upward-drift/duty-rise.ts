import { fitRamp, isClear, type Ramp } from '../../maths/fit-ramp.ts';
import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { dutyAgainstOthers } from './duty.ts';
import { meta } from './meta.ts';
import { endMinusStart } from './probe-rises.ts';
import { settings } from './settings.ts';

const leastDaysBefore = 3;
export const dutyClarity = {
  leastSize: settings.dutyRise.value,
  leastScales: settings.kneeScales.value,
  leastScale: 0.01,
  leastExplained: settings.explainedShare.value,
};

/**
 * The early witness. With a control that holds its temperature, a coil that ices or starves first shows as a
 * valve that stays open longer; the air moves only when it no longer closes. Reported as such, apart from a
 * rise of the air. A valve that feeds more and cools the air further lacks nothing: it was told to.
 */
export function dutyRise(signals: CircuitSignals, members: readonly CircuitSignals[]): Evidence | null {
  const duty = dutyAgainstOthers(signals, members);
  const ramp = fitRamp(
    duty.map((_, day) => day),
    duty,
  );
  if (ramp === null || ramp.start + 1 < leastDaysBefore) return null;
  const rise = ramp.after - ramp.before;
  const now = median(duty.filter(Number.isFinite).slice(-3));
  if (rise <= 0 || now - ramp.before < settings.dutyRise.value || !isClear(ramp, dutyClarity)) return null;
  if (endMinusStart(signals.level, ramp.start) < -settings.stillUp.value) return null;
  const { circuit, log } = signals;
  const day = log.calendar.days[ramp.start]!;
  return {
    analysis: meta.id,
    kind: 'upward-drift',
    circuit: circuit.id,
    suctionGroup: circuit.suctionGroup,
    probe: null,
    points: circuit.valve === null ? [] : [circuit.valve.point],
    onset: log.grid.startMs + ((day.from + day.to) / 2) * log.grid.stepMs,
    end: null,
    certainty: Math.min(0.9, ramp.explained * (1 - Math.exp(-rise / 0.15))),
    measures: [
      {
        name: 'rise of the share of time the valve feeds',
        value: 100 * rise,
        low: null,
        high: null,
        unit: '%',
      },
    ],
    features: {
      dutyRise: rise,
      dutyNow: median(signals.duty.filter(Number.isFinite).slice(-3)),
      dutyFull: settings.dutyFull.value,
      rampDays: ramp.end - ramp.start,
      setPointMoved: setPointMoved(signals, ramp) ? 1 : 0,
    },
    shape: 'duty',
    projection: null,
  };
}

/** A colder set point asks for more feeding: that is intent. */
function setPointMoved(signals: CircuitSignals, ramp: Ramp): boolean {
  const { days } = signals.log.calendar;
  const from = days[Math.max(0, ramp.start - 2)]!.from;
  const to = days[Math.min(days.length - 1, ramp.end + 2)]!.to;
  return signals.setPointSteps.some((step) => step.at >= from && step.at <= to);
}
