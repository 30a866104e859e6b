import type { Measure } from '../../model/evidence.ts';
import type { Finding, Projection } from '../../model/finding.ts';
import type { Signals } from '../../signals/types.ts';
import type { EpochMs } from '../../units/quantities.ts';
import { causeAdvice } from '../cause-catalogue.ts';
import { findingId } from '../identity.ts';
import type { Judgement } from '../judgement.ts';
import { oneProbeFeatures } from '../one-probe-causes.ts';
import { severityOf } from '../severity.ts';
import { standingToLimit } from '../standing-limit.ts';
import { featuresOf, type Trouble } from '../trouble.ts';
import { becauseOf } from './because.ts';
import { notThese } from './look-alikes.ts';
import { summarise } from './summary.ts';
import { whatWouldDecide } from './would-decide.ts';

const dayMs = 86_400_000;

/** A judged trouble as the finding that people read. */
export function wordFinding(
  trouble: Trouble,
  judgement: Judgement,
  confidence: number,
  signals: Signals,
  now: EpochMs,
): Finding {
  const { lead } = trouble;
  const projection = judgement.origin === 'probe' ? null : projectionOf(trouble);
  const features = oneProbeFeatures(featuresOf(trouble), lead.shape);
  const severity = severityOf(trouble, judgement, confidence, projection, now);
  const place = {
    suctionGroup: lead.suctionGroup,
    circuit: lead.circuit,
    probe: lead.probe,
    points: [...new Set(trouble.evidence.flatMap((one) => one.points))],
    onset: lead.onset,
  };
  return {
    ...place,
    id: findingId({ ...place, site: signals.log.site, kind: judgement.kind, shape: lead.shape }),
    kind: judgement.kind,
    severity,
    origin: judgement.origin,
    end: lead.end,
    confidence,
    summary: summarise(trouble, judgement, projection, signals),
    measures: [...measuresOf(trouble), ...timeToLimit(projection, now)],
    causes: judgement.causes.map((weighed) => ({
      cause: weighed.cause,
      likelihood: weighed.likelihood,
      because: becauseOf(weighed, features, signals.log.units),
      ...causeAdvice[weighed.cause],
    })),
    projection,
    notThis: notThese(trouble, judgement, signals),
    wouldDecide: whatWouldDecide(trouble, judgement),
    covers: trouble.covers,
    evidence: trouble.evidence,
  };
}

/** A date before a reason for none; where the air stands already before where it may go. */
function projectionOf(trouble: Trouble): Projection | null {
  const known = [trouble.lead, ...trouble.evidence].flatMap(({ projection }) => projection ?? []);
  const stand = standingToLimit(trouble);
  const all = stand === null ? known : [...known, stand];
  return all.find(({ at }) => at !== null) ?? all[0] ?? null;
}

/** Measures of all evidence, each name once, the lead's first. */
function measuresOf(trouble: Trouble): Measure[] {
  const byName = new Map<string, Measure>();
  for (const one of [trouble.lead, ...trouble.evidence]) {
    for (const measure of one.measures) if (!byName.has(measure.name)) byName.set(measure.name, measure);
  }
  return [...byName.values()];
}

function timeToLimit(projection: Projection | null, now: EpochMs): Measure[] {
  if (projection?.at == null || projection.at <= now) return [];
  const days = (at: EpochMs | null): number | null => (at === null ? null : Math.max(0, (at - now) / dayMs));
  return [
    {
      name: 'time to limit',
      value: days(projection.at)!,
      low: days(projection.earliest),
      high: days(projection.latest),
      unit: 'd',
    },
  ];
}
