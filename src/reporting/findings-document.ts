import type { Measure } from '../model/evidence.ts';
import type { Diagnosis, Finding } from '../model/finding.ts';
import type { ImportReport } from '../model/import-report.ts';
import type { Log } from '../model/log.ts';
import { formatPressure, formatTemperature, localTimestamp } from '../units/display.ts';
import type { EpochMs } from '../units/quantities.ts';
import { airNotFood } from './air-not-food.ts';
import { displayMeasure } from './display-measure.ts';
import type { FindingsDocument } from './findings-schema.ts';
import { importDocument } from './import-document.ts';
import { endOf } from './local-time.ts';

type DocumentFinding = FindingsDocument['findings'][number];

function timestamp(time: EpochMs, log: Log): string {
  const text = localTimestamp(time, log);
  if (text === null) throw new RangeError(`A finding carries a time that is none: ${time}`);
  return text;
}

const optionalTimestamp = (time: EpochMs | null, log: Log): string | null =>
  time === null ? null : timestamp(time, log);

const finiteOrNull = (value: number | null): number | null =>
  value !== null && Number.isFinite(value) ? value : null;

function documentMeasures(measures: readonly Measure[], log: Log): DocumentFinding['evidence'] {
  return measures
    .filter(({ value }) => Number.isFinite(value))
    .map((measure) => ({
      name: measure.name,
      value: measure.value,
      low: finiteOrNull(measure.low),
      high: finiteOrNull(measure.high),
      unit: measure.unit,
      display: displayMeasure(measure, log),
    }));
}

function documentProjection(finding: Finding, log: Log): DocumentFinding['projection'] {
  const { projection } = finding;
  if (projection === null || !Number.isFinite(projection.limit)) return null;
  const isPressure = finding.kind === 'rack-pressure';
  return {
    limit: projection.limit,
    unit: isPressure ? 'kPa' : 'Cel',
    display: isPressure
      ? formatPressure(projection.limit, log.units, log.atmosphere)
      : formatTemperature(projection.limit, log.units),
    at: optionalTimestamp(projection.at, log),
    earliest: optionalTimestamp(projection.earliest, log),
    latest: optionalTimestamp(projection.latest, log),
    reason: projection.reason,
  };
}

function documentFinding(finding: Finding, log: Log): DocumentFinding {
  return {
    id: finding.id,
    kind: finding.kind,
    severity: finding.severity,
    circuit: finding.circuit,
    suctionGroup: finding.suctionGroup,
    probe: finding.probe,
    points: [...finding.points],
    origin: finding.origin,
    onset: timestamp(finding.onset, log),
    end: optionalTimestamp(finding.end, log),
    confidence: finding.confidence,
    summary: finding.summary,
    evidence: documentMeasures(finding.measures, log),
    causes: finding.causes.map((cause) => ({
      cause: cause.cause,
      likelihood: cause.likelihood,
      because: cause.because,
      checkFirst: [...cause.checkFirst],
      bring: [...cause.bring],
    })),
    projection: documentProjection(finding, log),
    notThis: [...finding.notThis],
    wouldDecide: finding.wouldDecide,
    covers: [...finding.covers],
  };
}

/** The findings document of the contract. Every number in it is finite; what is not known is null or left out. */
export function findingsDocument(log: Log, report: ImportReport, diagnosis: Diagnosis): FindingsDocument {
  return {
    format: 'rimelog-findings/1',
    site: log.site,
    timeZone: log.calendar.timeZone,
    span: { start: timestamp(log.grid.startMs, log), end: timestamp(endOf(log), log) },
    units: { temperature: log.units.temperature, pressure: log.units.pressure },
    import: importDocument(report),
    findings: diagnosis.findings.map((finding) => documentFinding(finding, log)),
    circuits: diagnosis.circuits.map(({ id, name, rank, worst }) => ({ id, name, rank, worst })),
    abstentions: diagnosis.abstentions.map(({ analysis, circuit, suctionGroup, reason, needs }) => ({
      analysis,
      circuit,
      suctionGroup,
      reason,
      needs,
    })),
    notice: airNotFood,
  };
}
