import { mean } from '../maths/mean.ts';
import type { Finding } from '../model/finding.ts';
import { dayAt, indexAt } from '../model/grid.ts';
import type { CircuitSignals } from '../signals/types.ts';
import type { Celsius } from '../units/quantities.ts';
import type { AlarmRule } from './alarm-rule.ts';

/** Figures for one line: what one probe stood at while an alarm on the average saw nothing. */
export interface HiddenByAverage {
  readonly date: string;
  readonly probe: string;
  readonly probeLevel: Celsius;
  readonly others: readonly Celsius[];
  readonly average: Celsius;
  readonly limit: Celsius;
}

/**
 * The day on which the probe of the finding stood farthest above the average of its circuit, in medians of settled
 * air. Null where the alarm does not listen to the average, the finding is about no one probe, or the average
 * itself was over the limit.
 */
export function hiddenByAverage(
  signals: CircuitSignals,
  finding: Finding,
  rule: AlarmRule,
): HiddenByAverage | null {
  const { circuit, usable, probes, log } = signals;
  const place = circuit.probes.findIndex(({ point }) => point === finding.probe);
  if (rule.input !== 'average' || place < 0 || !usable[place]) return null;
  const first = dayAt(log.calendar, indexAt(log.grid, finding.onset));
  const last =
    finding.end === null ? log.calendar.days.length - 1 : dayAt(log.calendar, indexAt(log.grid, finding.end));
  let best: HiddenByAverage | null = null;
  for (let day = first; day <= last; day++) {
    const levels = probes.map(({ median }) => median[day]!);
    const chosen = levels.filter((level, k) => usable[k] && !Number.isNaN(level));
    const average = mean(chosen);
    const probeLevel = levels[place]!;
    if (!(probeLevel > average) || chosen.length < 2) continue;
    if (best !== null && probeLevel - average <= best.probeLevel - best.average) continue;
    const others = levels.filter((level, k) => k !== place && usable[k] && !Number.isNaN(level));
    const { date } = log.calendar.days[day]!;
    best = { date, probe: finding.probe!, probeLevel, others, average, limit: rule.limit };
  }
  return best !== null && best.average <= best.limit ? best : null;
}
