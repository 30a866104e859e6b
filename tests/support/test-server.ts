import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { storeResult } from '../../server/analysis/store-result.ts';
import { startServer } from '../../server/serve.ts';
import type { ServerOptions } from '../../server/settings.ts';
import type { AnalysedExports } from '../../src/pipeline/analyse-exports.ts';
import { ExportStore } from '../../src/store/export-store.ts';
import type { StoredExport } from '../../src/store/stored-export.ts';

export interface TestServer {
  /** Without a slash at the end. */
  readonly base: string;
  readonly dataFolder: string;
  /** What the server said to whoever runs it. */
  readonly log: readonly string[];
  close(): Promise<void>;
}

export async function temporaryFolder(): Promise<string> {
  return mkdtemp(join(tmpdir(), 'rimelog-test-'));
}

/** A server on a free port with a data folder of its own, both gone after `close`. */
export async function testServer(options: Partial<ServerOptions> = {}): Promise<TestServer> {
  const dataFolder = options.dataFolder ?? (await temporaryFolder());
  const log: string[] = [];
  const { address, close } = await startServer({
    port: 0,
    host: '127.0.0.1',
    log: (line) => log.push(line),
    ...options,
    dataFolder,
  });
  return {
    base: address.replace(/\/$/, ''),
    dataFolder,
    log,
    close: async () => {
      await close();
      await rm(dataFolder, { recursive: true, force: true });
    },
  };
}

const received = {
  format: 'rimelog-stored-export/1',
  received: '2026-10-01T08:00:00.000Z',
  attempts: 1,
  files: [{ name: 'export.csv', storedAs: 'upload-001.csv', bytes: 1000 }],
  siteFile: null,
  problem: null,
  summary: null,
} as const;

/** Puts an analysed export into a data folder before a server opens it; returns its id. */
export async function storeAnalysed(dataFolder: string, analysed: AnalysedExports): Promise<string> {
  const store = await ExportStore.open(dataFolder);
  try {
    const { id } = await store.begin();
    await store.accept({ ...received, id, state: 'waiting' });
    const summary = await storeResult(store.folderOf(id), analysed);
    await store.update(id, { state: 'ready', summary });
    return id;
  } finally {
    store.close();
  }
}

/** The same with an export that could not be analysed, or in any other state. */
export async function storeState(dataFolder: string, state: Partial<StoredExport>): Promise<string> {
  const store = await ExportStore.open(dataFolder);
  try {
    const { id } = await store.begin();
    await store.accept({ ...received, state: 'waiting', ...state, id });
    return id;
  } finally {
    store.close();
  }
}
