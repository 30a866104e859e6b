import type { PlantedFault } from '../../sample-logs/maker/simulated-store.ts';
import type { Finding, Severity } from '../../src/model/finding.ts';
import type { HoursAfter } from './hours-after.ts';
import type { ProjectionOutcome } from './projection.ts';

/** What came of one planted fault. Times epoch ms. */
export interface FaultOutcome {
  readonly fault: PlantedFault;
  readonly probePoint: string | null;
  readonly probes: number;
  /** False where the logging interval cannot show the fault. */
  readonly visible: boolean;
  readonly finding: FindingSummary | null;
  /** Everything said of the circuit or group, for the list of misses. */
  readonly said: readonly FindingSummary[];
  /** Whether it was found in the export cut off when the local rise was 3 °F; null where that never was. */
  readonly early: boolean | null;
  /** First cut (to a quarter day) at which it is found and stays found; null when not asked or never. */
  readonly flaggedAt: number | null;
  /** What was said in exports that end so many hours after the onset; empty where none were asked. */
  readonly hoursAfter: readonly HoursAfter[];
  readonly alarms: { readonly inForce: number | null; readonly singleProbe: number | null } | null;
  /** Own flags of circuits under a rack fault; null for other faults. */
  readonly flaggedUnderRack: number | null;
  /** How many of these stand on circuits that the same store without its faults flags as well; null where there are none. */
  readonly flaggedAnyway: number | null;
  /** At the cut when the local rise was 3 °F or, for far creeps, at a drawn cut; null where nothing was left to forecast. */
  readonly projection: ProjectionOutcome | null;
  /** Why drawn cuts gave no date. */
  readonly undated: readonly string[];
}

export interface FindingSummary {
  readonly kind: string;
  readonly severity: Severity;
  readonly circuit: string | null;
  readonly suctionGroup: string | null;
  readonly probe: string | null;
  readonly origin: string;
  readonly causes: readonly string[];
  readonly onset: number;
  readonly confidence: number;
  readonly summary: string;
  /** Whether it speaks of a planted fault with the right origin. */
  readonly right: boolean;
}

export interface CaseOutcome {
  readonly seed: number;
  readonly simulator: 'one' | 'two';
  readonly dialect: string;
  readonly intervalMinutes: number;
  readonly temperatureStep: string;
  readonly faults: readonly FaultOutcome[];
  readonly lookAlikes: readonly string[];
  readonly falseFlags: readonly FindingSummary[];
  readonly healthyCircuits: number;
  readonly flags: readonly FindingSummary[];
  readonly seconds: { readonly simulate: number; readonly pipeline: number };
  readonly error: string | null;
}

export function summarise(finding: Finding, right: boolean): FindingSummary {
  const { kind, severity, circuit, suctionGroup, probe, origin, onset, confidence, summary } = finding;
  return {
    kind,
    severity,
    circuit,
    suctionGroup,
    probe,
    origin,
    causes: finding.causes.map(({ cause }) => cause),
    onset,
    confidence,
    summary,
    right,
  };
}
