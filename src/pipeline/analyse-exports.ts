import { diagnose } from '../diagnosis/diagnose.ts';
import { assembleLog } from '../importing/assemble.ts';
import type { SiteGuess } from '../importing/naming/guess-site.ts';
import type { Diagnosis } from '../model/finding.ts';
import type { ImportReport } from '../model/import-report.ts';
import type { Log } from '../model/log.ts';
import { computeSignals } from '../signals/compute-signals.ts';
import type { Signals } from '../signals/types.ts';
import { type ExportRequest, gatherReadings, type Stage } from './gather-readings.ts';

export interface AnalysisRequest extends ExportRequest {
  /** Only what lies between these local or RFC 3339 times is analysed. */
  readonly from?: string | null;
  readonly to?: string | null;
}

/** Everything that is known of an export after it was analysed. */
export interface AnalysedExports {
  readonly log: Log;
  readonly report: ImportReport;
  readonly signals: Signals;
  readonly diagnosis: Diagnosis;
  /** What was guessed, where no site file was given. */
  readonly guess: SiteGuess | null;
}

/** From exports to findings: opening, reading, arranging, signals, diagnosis. Throws ImportRefusal. */
export async function analyseExports(request: AnalysisRequest): Promise<AnalysedExports> {
  const begin = (stage: Stage): void => request.onProgress?.({ stage, share: null });
  const { readings, site } = await gatherReadings(request);
  begin('arranging');
  const { log, report, guess } = assembleLog(readings, site, {
    ...(request.from ? { from: request.from } : {}),
    ...(request.to ? { to: request.to } : {}),
  });
  begin('looking for defrosts and cycles');
  const signals = computeSignals(log);
  begin('judging');
  const diagnosis = diagnose(signals);
  return { log, report, signals, diagnosis, guess };
}
