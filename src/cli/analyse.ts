import type { AnalysedExports } from '../pipeline/analyse-exports.ts';
import type { Console } from './console.ts';
import type { ReadingOptions } from './options.ts';
import { overridesFrom, statedUnits } from './override-options.ts';
import { progressLine } from './progress-line.ts';
import { siteFileFor } from './request.ts';

interface Span {
  readonly from?: string;
  readonly to?: string;
}

/** Reads and judges the exports of one call, its progress on standard error. The pipeline is loaded when it is needed. */
export async function analyse(
  exports: readonly string[],
  options: ReadingOptions & Span,
  io: Console,
): Promise<AnalysedExports> {
  const progress = progressLine(io);
  const siteFile = await siteFileFor(exports, options.site, io);
  const { analyseExports } = await import('../pipeline/analyse-exports.ts');
  try {
    return await analyseExports({
      exports,
      siteFile,
      timeZone: options.timeZone ?? null,
      overrides: overridesFrom(options),
      units: statedUnits(options),
      from: options.from ?? null,
      to: options.to ?? null,
      onProgress: progress.show,
    });
  } finally {
    progress.clear();
  }
}
