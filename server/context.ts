import type { ExportStore } from '../src/store/export-store.ts';
import type { StoredExport } from '../src/store/stored-export.ts';
import type { Analyser } from './analysis/analyser.ts';
import type { OnDemand } from './analysis/on-demand.ts';
import { Problem } from './problem.ts';
import type { ServerLimits } from './settings.ts';

/** What the routes share. */
export interface Context {
  readonly store: ExportStore;
  readonly analyser: Analyser;
  readonly onDemand: OnDemand;
  readonly limits: ServerLimits;
  readonly webFolder: string;
  readonly log: (line: string) => void;
}

/** Throws `unknown-export` for an id that is not stored. */
export function storedExport({ store }: Context, id: unknown): StoredExport {
  const stored = typeof id === 'string' ? store.get(id) : null;
  if (stored === null) throw new Problem('unknown-export');
  return stored;
}

/** Throws `not-ready` or `analysis-failed` for an export without a result. */
export function readyExport(context: Context, id: unknown): StoredExport {
  const stored = storedExport(context, id);
  if (stored.state === 'failed') {
    throw new Problem('analysis-failed', {
      ...(stored.problem ? { detail: stored.problem.message } : {}),
      ...(stored.problem?.remedy ? { remedy: stored.problem.remedy } : {}),
    });
  }
  if (stored.state !== 'ready') throw new Problem('not-ready', { headers: { 'Retry-After': '2' } });
  return stored;
}
