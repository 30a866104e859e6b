import type { StoredExport } from '../../src/store/stored-export.ts';
import type { Context } from '../context.ts';
import { addressesOf } from './addresses.ts';

/** An export as the list and its own address show it; how it lies on disk is nobody's business. */
export function exportEntry(context: Context, stored: StoredExport) {
  const { id, received, state, files, siteFile, problem, summary } = stored;
  return {
    id,
    received,
    state,
    files: files.map(({ name, bytes }) => ({ name, bytes })),
    siteFile: siteFile === null ? null : siteFile.name,
    progress: context.analyser.progressOf(id),
    problem,
    summary,
    ...addressesOf(id),
  };
}
