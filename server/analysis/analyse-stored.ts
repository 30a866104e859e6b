import { type AnalysedExports, analyseExports } from '../../src/pipeline/analyse-exports.ts';
import { openStoredExports, readStoredSiteFile } from './open-stored.ts';
import type { AnalysisProgress, StoredFiles } from './task.ts';

/** From the files of a stored upload to its findings. Throws ImportRefusal. */
export async function analyseStored(
  stored: StoredFiles,
  onProgress: (progress: AnalysisProgress) => void = () => undefined,
): Promise<AnalysedExports> {
  return analyseExports({
    exports: await openStoredExports(stored),
    siteFile: await readStoredSiteFile(stored),
    onProgress,
  });
}
