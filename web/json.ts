/**
 * The server's answers (docs/reference/openapi.json), by the types that they are made with. Only types come from there:
 * the page computes nothing.
 */

import type { CircuitDays } from '../server/analysis/circuit-days.ts';
import type { PressureDays } from '../server/analysis/pressure-days.ts';
import type { SiteReport as CurrentSiteReport } from '../server/analysis/site-report.ts';
import type { AnalysisProgress } from '../server/analysis/task.ts';
import type { exportEntry } from '../server/routes/export-entry.ts';
import type { PlotSeries } from '../server/routes/series.ts';
import type { CircuitBackground as CurrentBackground } from '../src/reporting/background/circuit-background.ts';
import type { UsualPoint, UsualRange } from '../src/reporting/background/normal-here.ts';
import type {
  ComparedPlaceDocument,
  ComparisonDocument,
} from '../src/reporting/comparison/comparison-document.ts';
import type { SistersDocument } from '../src/reporting/comparison/sisters-document.ts';
import type { FindingsDocument } from '../src/reporting/findings-schema.ts';
import type { MeasureDocument, RepairDocument } from '../src/reporting/repair/repair-document.ts';

export type {
  CircuitDays,
  ComparedPlaceDocument,
  ComparisonDocument,
  FindingsDocument,
  MeasureDocument,
  PressureDays,
  RepairDocument,
  SistersDocument,
  UsualPoint,
  UsualRange,
};

/** What an analysis of an earlier rimelog did not give may be missing. */
type WithEarlier<T, Later extends keyof T> = Omit<T, Later> & Partial<Pick<T, Later>>;

export type SiteReport = WithEarlier<CurrentSiteReport, 'fullMonths' | 'pressures' | 'pressureUnit'>;
export type CircuitBackground = WithEarlier<CurrentBackground, 'sisters'>;

export type ExportEntry = ReturnType<typeof exportEntry>;
export type ProblemText = NonNullable<ExportEntry['problem']>;
export type Progress = Omit<AnalysisProgress, 'stage'> & { readonly stage: string };

export type Finding = FindingsDocument['findings'][number];
export type Severity = Finding['severity'];
export type Cause = Finding['causes'][number];
export type Measure = Finding['evidence'][number];

/** One circuit's or suction group's plot. */
export type CircuitSeries = PlotSeries;
export type Line = CircuitSeries['probes'][number]['line'];
export type Span = CircuitSeries['span'];

/** Lowest and highest of each column. */
export type Band = Pick<CircuitSeries['settled']['probes'][number], 'low' | 'high'>;
