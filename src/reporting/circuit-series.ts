import type { Finding, Severity } from '../model/finding.ts';
import { indexAt, timeAt } from '../model/grid.ts';
import type { Circuit, Log, SuctionGroup } from '../model/log.ts';
import type { Record, Target } from '../model/record.ts';
import type { CircuitSignals, DefrostWindow } from '../signals/types.ts';
import type { EpochMs } from '../units/quantities.ts';
import { columnMeans } from './column-means.ts';
import { type ReducedSeries, reduceSeries, type SampleRange } from './reduce-series.ts';
import { siteScale } from './site-scale.ts';

interface TimeSpan {
  readonly from: EpochMs;
  readonly to: EpochMs;
}

/** What a plot of one circuit shows, in the site's units and as plain JSON. */
export interface CircuitSeries {
  readonly circuit: string;
  readonly name: string;
  readonly span: TimeSpan;
  readonly timeZone: string;
  /** Offset from UTC in minutes, from `from` on. */
  readonly offsets: readonly { readonly from: EpochMs; readonly offsetMinutes: number }[];
  readonly temperatureUnit: string;
  readonly pressureUnit: string;
  readonly probes: readonly { readonly point: string; readonly line: ReducedSeries }[];
  readonly setPoint: ReducedSeries | null;
  /** The high limit of the alarm in force, where the site file gives it. */
  readonly limit: number | null;
  readonly defrosts: readonly (TimeSpan & { readonly source: 'status' | 'schedule' | 'shape' })[];
  readonly off: readonly TimeSpan[];
  /** Share open, 0 to 1, averaged over each pixel. */
  readonly valve: { readonly point: string; readonly line: ReducedSeries } | null;
  readonly suction: {
    readonly group: string;
    readonly point: string;
    readonly line: ReducedSeries;
    readonly target: ReducedSeries | null;
  } | null;
  readonly findings: readonly FindingSpan[];
}

export interface FindingSpan {
  readonly id: string;
  readonly severity: Severity;
  readonly probe: string | null;
  readonly onset: EpochMs;
  readonly end: EpochMs | null;
  readonly summary: string;
}

type Convert = (value: number) => number;

/** A fixed target is a line of two points. */
function targetSeries(
  target: Target | null,
  log: Log,
  range: SampleRange,
  pixels: number,
  convert: Convert,
): ReducedSeries | null {
  if (target === null) return null;
  if (typeof target !== 'number') return reduceSeries(target.values, log.grid, range, pixels, convert);
  const times = [timeAt(log.grid, range.from), timeAt(log.grid, range.to - 1)];
  return { times, values: [convert(target), convert(target)] };
}

function spansWithin<Span extends SampleRange>(
  spans: readonly Span[],
  log: Log,
  range: SampleRange,
): readonly { readonly span: Span; readonly time: TimeSpan }[] {
  return spans
    .filter((span) => span.to > range.from && span.from < range.to)
    .map((span) => ({
      span,
      time: {
        from: timeAt(log.grid, Math.max(span.from, range.from)),
        to: timeAt(log.grid, Math.min(span.to, range.to)),
      },
    }));
}

function valveSeries(
  valve: Record | null,
  log: Log,
  range: SampleRange,
  pixels: number,
): CircuitSeries['valve'] {
  if (valve === null) return null;
  const { times, mean } = columnMeans(valve.values, log.grid, range, pixels, (share) => share);
  return { point: valve.point, line: { times, values: mean } };
}

function suctionSeries(
  group: SuctionGroup | null,
  log: Log,
  range: SampleRange,
  pixels: number,
): CircuitSeries['suction'] {
  if (group === null || group.pressure === null) return null;
  const { pressure } = siteScale(log);
  return {
    group: group.id,
    point: group.pressure.point,
    line: reduceSeries(group.pressure.values, log.grid, range, pixels, pressure),
    target: targetSeries(group.pressureSetPoint, log, range, pixels, pressure),
  };
}

/** Findings that a plot of this circuit has to mark: its own, and those of its rack that cover it. */
export function findingsOf(circuit: Circuit, findings: readonly Finding[]): readonly Finding[] {
  return findings.filter((finding) => finding.circuit === circuit.id || finding.covers.includes(circuit.id));
}

/** What a plot needs of the signals of one circuit. */
export interface PlottedSignals extends Pick<CircuitSignals, 'circuit' | 'offSpells'> {
  readonly defrosts: readonly Pick<DefrostWindow, 'from' | 'to' | 'source'>[];
}

export function circuitSignals<OneCircuit extends Pick<CircuitSignals, 'circuit'>>(
  signals: { readonly circuits: readonly OneCircuit[] },
  circuitId: string,
): OneCircuit {
  const found = signals.circuits.find(({ circuit }) => circuit.id === circuitId);
  if (found === undefined) throw new RangeError(`This log has no circuit ${circuitId}.`);
  return found;
}

/**
 * Everything that a plot of one circuit between two instants needs, reduced to `pixels` columns.
 * Throws a RangeError for a circuit that the log does not have.
 */
export function circuitSeries(
  log: Log,
  signals: { readonly circuits: readonly PlottedSignals[] },
  circuitId: string,
  from: EpochMs,
  to: EpochMs,
  pixels: number,
  findings: readonly Finding[] = [],
): CircuitSeries {
  const { circuit, defrosts, offSpells } = circuitSignals(signals, circuitId);
  const { grid, calendar } = log;
  const first = indexAt(grid, from);
  const range: SampleRange = { from: first, to: Math.max(first, indexAt(grid, to)) + 1 };
  const scale = siteScale(log);
  const group = log.suctionGroups.find(({ id }) => id === circuit.suctionGroup) ?? null;
  return {
    circuit: circuit.id,
    name: circuit.name,
    span: { from: timeAt(grid, range.from), to: timeAt(grid, range.to - 1) },
    timeZone: calendar.timeZone,
    offsets: calendar.offsets.map((segment) => ({
      from: timeAt(grid, segment.from),
      offsetMinutes: segment.offsetMinutes,
    })),
    temperatureUnit: scale.temperatureSign,
    pressureUnit: scale.pressureSign,
    probes: circuit.probes.map(({ point, record }) => ({
      point,
      line: reduceSeries(record.values, grid, range, pixels, scale.temperature),
    })),
    setPoint: targetSeries(circuit.setPoint, log, range, pixels, scale.temperature),
    limit: circuit.limits === null ? null : scale.temperature(circuit.limits.high),
    defrosts: spansWithin(defrosts, log, range).map(({ span, time }) => ({ ...time, source: span.source })),
    off: spansWithin(offSpells, log, range).map(({ time }) => time),
    valve: valveSeries(circuit.valve, log, range, pixels),
    suction: suctionSeries(group, log, range, pixels),
    findings: findingsOf(circuit, findings).map(({ id, severity, probe, onset, end, summary }) => ({
      id,
      severity,
      probe,
      onset,
      end,
      summary,
    })),
  };
}
