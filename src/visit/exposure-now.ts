import { actionLimitOf } from '../exposure/circuit-exposure.ts';
import { exposureAbove } from '../exposure/exposure.ts';
import type { AirLimit } from '../model/air-limit.ts';
import type { Finding } from '../model/finding.ts';
import { samplesIn } from '../model/grid.ts';
import type { CircuitSignals } from '../signals/types.ts';
import { Phase } from '../signals/types.ts';
import type { Minutes } from '../units/quantities.ts';

/** The last day of the record, defrosts and the recoveries after them left out: what the case is like now. */
export interface ExposureNow {
  readonly circuit: string;
  readonly limit: AirLimit;
  readonly point: string;
  readonly aboveMinutes: Minutes;
  readonly kelvinHours: number;
}

const lastMinutes: Minutes = 1440;

/** Air of a circuit that cools, and of one that stands off: nothing brings that one back. */
const counts = (phase: number): boolean => phase === Phase.cooling || phase === Phase.off;

/** The worst usable probe that is not itself said to lie; null without a limit or a probe. */
export function exposureNow(signals: CircuitSignals, findings: readonly Finding[]): ExposureNow | null {
  const limit = actionLimitOf(signals);
  if (limit === null) return null;
  const { circuit, usable, phase, log } = signals;
  const lying = findings.filter(({ origin }) => origin === 'probe').map(({ probe }) => probe);
  const to = log.grid.count;
  const from = Math.max(0, to - samplesIn(log.grid, lastMinutes));
  let worst: ExposureNow | null = null;
  circuit.probes.forEach(({ point, record }, k) => {
    if (!usable[k] || lying.includes(point)) return;
    const air = record.values.map((value, i) => (counts(phase[i]!) ? value : Number.NaN));
    const { aboveMinutes, kelvinHours } = exposureAbove(air, phase, limit.value, log.grid, { from, to });
    if (worst === null || kelvinHours > worst.kelvinHours)
      worst = { circuit: circuit.id, limit, point, aboveMinutes, kelvinHours };
  });
  return worst;
}
