import { median } from '../maths/median.ts';
import type { Finding } from '../model/finding.ts';
import { indexAt, samplesIn, timeAt } from '../model/grid.ts';
import { targetAt } from '../model/record.ts';
import type { CircuitSignals, Signals } from '../signals/types.ts';
import type { Celsius, EpochMs, Kelvin } from '../units/quantities.ts';

/** Something that the visit left otherwise than it found it, or that nobody has put back since. */
export type LeftOpen =
  | { readonly what: 'shut-off' | 'override'; readonly circuit: string; readonly since: EpochMs }
  | {
      readonly what: 'set-point';
      readonly circuit: string;
      readonly since: EpochMs;
      readonly from: Celsius;
      readonly to: Celsius;
    }
  | { readonly what: 'no-defrost'; readonly circuit: string; readonly since: EpochMs };

const leastStep: Kelvin = 0.25;
/** Changes up to so long before the stated time belong to the visit: clocks and memories are not exact. */
const visitReachHours = 12;
/** A defrost is overdue when this many usual intervals have passed without one. */
const overdueIntervals = 2;

/** Everything back on? Looked for on every circuit of the site, not only on the one that was serviced. */
export function leftOpen(signals: Signals, findings: readonly Finding[], serviced: EpochMs): LeftOpen[] {
  return signals.circuits.flatMap((circuit) => {
    const stop = circuit.offSpells.find(({ to }) => to >= circuit.log.grid.count);
    if (stop !== undefined) {
      return [{ what: 'shut-off', circuit: circuit.circuit.id, since: timeAt(circuit.log.grid, stop.from) }];
    }
    return [
      ...overridden(circuit, findings),
      ...setPointMoved(circuit, serviced),
      ...withoutDefrost(circuit),
    ];
  });
}

function overridden({ circuit }: CircuitSignals, findings: readonly Finding[]): LeftOpen[] {
  const standing = findings.find(
    ({ kind, circuit: of, end, evidence }) =>
      kind === 'left-off' &&
      of === circuit.id &&
      end === null &&
      evidence.some(({ shape }) => shape === 'override-on'),
  );
  return standing === undefined ? [] : [{ what: 'override', circuit: circuit.id, since: standing.onset }];
}

/** The set point that was in force before the visit, against the one at the end of the export. */
function setPointMoved({ circuit, setPointSteps, log }: CircuitSignals, serviced: EpochMs): LeftOpen[] {
  const reach = indexAt(log.grid, serviced) - samplesIn(log.grid, visitReachHours * 60);
  const steps = setPointSteps.filter(({ at }) => at >= reach);
  const first = steps[0];
  if (first === undefined) return [];
  const logged =
    typeof circuit.setPoint === 'object' ? lastKnownTarget(circuit.setPoint, log.grid.count) : Number.NaN;
  const now = Number.isNaN(logged) ? steps.at(-1)!.to : logged;
  if (Math.abs(now - first.from) < leastStep) return [];
  const since = timeAt(log.grid, steps.at(-1)!.at);
  return [{ what: 'set-point', circuit: circuit.id, since, from: first.from, to: now }];
}

function lastKnownTarget(target: CircuitSignals['circuit']['setPoint'], count: number): Celsius {
  for (let i = count - 1; i >= 0; i--) {
    const value = targetAt(target, i);
    if (!Number.isNaN(value)) return value;
  }
  return Number.NaN;
}

function withoutDefrost({ circuit, defrosts, log }: CircuitSignals): LeftOpen[] {
  const last = defrosts.at(-1);
  if (last === undefined || defrosts.length < 4) return [];
  const usual = median(defrosts.slice(1).map(({ from }, k) => from - defrosts[k]!.from));
  if (log.grid.count - last.from < overdueIntervals * usual + samplesIn(log.grid, 60)) return [];
  return [{ what: 'no-defrost', circuit: circuit.id, since: timeAt(log.grid, last.to) }];
}
