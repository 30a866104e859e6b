import type { Evidence } from '../../model/evidence.ts';
import { timeAt } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { changeEvidence } from './change-evidence.ts';
import { flutter } from './flutter.ts';
import { dailyScatters } from './scatter.ts';

/** Probes whose reading jumps from sample to sample while their neighbours run smoothly. */
export function flutteringProbes(signals: CircuitSignals, living: readonly number[]): Evidence[] {
  const evidence: Evidence[] = [];
  const { grid, calendar } = signals.log;
  const scatters = dailyScatters(signals, living);
  for (const probe of living) {
    const peers = living.filter((other) => other !== probe);
    const found = flutter(signals, probe, peers, scatters);
    if (found === null) continue;
    const lasting = found.lastDay >= calendar.days.length - 1;
    evidence.push({
      ...changeEvidence(signals, probe, peers, {
        shape: 'flutter',
        onset: timeAt(grid, found.from),
        end: lasting ? null : timeAt(grid, calendar.days[found.lastDay]!.from),
        certainty: Math.min(0.97, 0.75 + 0.05 * found.ratio),
        shift: 0,
        error: 0,
        features: { flutterRatio: found.ratio, scatter: found.scatter },
      }),
      measures: [
        { name: 'scatter from sample to sample', value: found.scatter, low: null, high: null, unit: 'K' },
      ],
    });
  }
  return evidence;
}
