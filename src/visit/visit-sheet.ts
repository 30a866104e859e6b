import type { Diagnosis, Finding, RankedCause, Severity } from '../model/finding.ts';
import { severities } from '../model/finding.ts';
import type { Signals } from '../signals/types.ts';
import { type ExposureNow, exposureNow } from './exposure-now.ts';
import { type PhoneQuestion, phoneQuestions } from './phone-first.ts';

/** A circuit or suction group that is worth a stop. */
export interface Stop {
  readonly circuit: string | null;
  readonly suctionGroup: string | null;
  readonly severity: Severity;
  /** The finding that leads here, then the others of the same place. */
  readonly lead: Finding;
  readonly others: readonly Finding[];
  /** What the air of its circuits is above their limits, worst first: of the one, or of all that a group covers. */
  readonly exposures: readonly ExposureNow[];
  readonly cause: RankedCause | null;
  /** What it costs to let it wait: exposure now × rate × confidence; for the order alone. */
  readonly weight: number;
}

export interface VisitSheet {
  /** Worst first. */
  readonly stops: readonly Stop[];
  /** Free checks, before anybody drives. */
  readonly phoneFirst: readonly PhoneQuestion[];
  readonly findings: readonly Finding[];
}

/** Neither a case that is not warm yet nor a fault that does not creep is worth nothing. */
const leastKelvinHours = 0.5;
const leastKelvinPerDay = 0.2;

/** The stops of one visit: what must not wait before what can, each by exposure now × rate × confidence. */
export function visitSheet(signals: Signals, diagnosis: Diagnosis): VisitSheet {
  const findings = diagnosis.findings.filter(({ severity }) => severity !== 'note');
  const places = new Map<string, Finding[]>();
  for (const finding of findings) {
    const place = finding.circuit === null ? `group ${finding.suctionGroup}` : `circuit ${finding.circuit}`;
    places.set(place, [...(places.get(place) ?? []), finding]);
  }
  const stops = [...places.values()].map((own) => stopOf(own, signals));
  stops.sort(moreUrgent);
  return {
    stops,
    phoneFirst: phoneQuestions(stops, signals),
    findings,
  };
}

/** Sorts stops, of one store or of many: what must not wait first, then by what it costs to let it wait. */
export function moreUrgent(a: Urgency, b: Urgency): number {
  return severities.indexOf(b.severity) - severities.indexOf(a.severity) || b.weight - a.weight;
}

type Urgency = Pick<Stop, 'severity' | 'weight'>;

function stopOf(findings: readonly Finding[], signals: Signals): Stop {
  const [lead, ...others] = findings;
  const { circuit, suctionGroup } = lead!;
  const exposures = exposuresOf(findings, signals);
  const kelvinHours = exposures.reduce((sum, each) => sum + each.kelvinHours, 0);
  return {
    circuit,
    suctionGroup,
    severity: severities[Math.max(...findings.map(({ severity }) => severities.indexOf(severity)))]!,
    lead: lead!,
    others,
    exposures,
    cause: lead!.causes[0] ?? null,
    weight:
      Math.max(leastKelvinHours, kelvinHours) *
      Math.max(leastKelvinPerDay, rateOf(findings)) *
      lead!.confidence,
  };
}

function exposuresOf(findings: readonly Finding[], signals: Signals): ExposureNow[] {
  const places = new Set(findings.flatMap(({ circuit, covers }) => [circuit, ...covers]));
  return signals.circuits
    .filter(({ circuit }) => places.has(circuit.id))
    .flatMap((own) => exposureNow(own, findings) ?? [])
    .sort((a, b) => b.kelvinHours - a.kelvinHours);
}

/** The fastest rise that was measured here, K a day. */
function rateOf(findings: readonly Finding[]): number {
  const rates = findings.flatMap(({ measures, end }) =>
    end === null ? measures.filter(({ unit }) => unit === 'K/d').map(({ value }) => value) : [],
  );
  return Math.max(0, ...rates.filter(Number.isFinite));
}
