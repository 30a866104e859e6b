import { once } from 'node:events';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { ImportRefusal } from '../src/importing/readings.ts';
import { defaultDataFolder } from '../src/store/data-folder.ts';
import { ExportStore } from '../src/store/export-store.ts';
import { StorageRefusal } from '../src/store/storage-refusal.ts';
import { Analyser } from './analysis/analyser.ts';
import { AnalysisThreads } from './analysis/analysis-threads.ts';
import { OnDemand } from './analysis/on-demand.ts';
import { builtPagesFolder } from './analysis/worker-file.ts';
import { createApp } from './app.ts';
import type { Context } from './context.ts';
import { defaultLimits, type ServerLimits, type ServerOptions } from './settings.ts';

export interface RunningServer {
  /** `http://127.0.0.1:4180/` */
  readonly address: string;
  /** Stops taking requests, ends the analyses and lets the data folder go. */
  close(): Promise<void>;
}

/** Tried first when no port is asked for. */
const usualPort = 4180;

function limitServer(server: Server, limits: ServerLimits): void {
  server.requestTimeout = limits.requestMs;
  server.headersTimeout = limits.headersMs;
  server.timeout = limits.silenceMs;
  server.keepAliveTimeout = 5000;
  server.maxHeadersCount = 100;
}

async function listen(server: Server, host: string, port: number | null): Promise<void> {
  server.listen(port ?? usualPort, host);
  try {
    await once(server, 'listening');
  } catch (error) {
    if (port !== null || (error as NodeJS.ErrnoException).code !== 'EADDRINUSE') throw error;
    server.listen(0, host);
    await once(server, 'listening');
  }
}

function addressOf(server: Server, host: string): string {
  const { address, port, family } = server.address() as AddressInfo;
  const any = address === '0.0.0.0' || address === '::';
  const name = any ? 'localhost' : family === 'IPv6' ? `[${address}]` : address;
  return `http://${host === 'localhost' ? host : name}:${port}/`;
}

async function openStore(folder: string): Promise<ExportStore> {
  try {
    return await ExportStore.open(folder);
  } catch (error) {
    if (!(error instanceof StorageRefusal)) throw error;
    throw new ImportRefusal(error.code, `${error.message} ${error.remedy}`);
  }
}

function namesIn(list: string | undefined): string[] {
  return (list ?? '')
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '');
}

/**
 * Starts the pages and the HTTP interface. Throws an ImportRefusal when the data folder cannot be used, and the
 * error of the system when the port cannot be had.
 */
export async function startServer(options: ServerOptions): Promise<RunningServer> {
  const limits = { ...defaultLimits, ...options.limits };
  const log = options.log ?? ((line: string) => void process.stderr.write(`${line}\n`));
  const store = await openStore(options.dataFolder ?? defaultDataFolder());
  const threads = new AnalysisThreads(limits, log);
  const analyser = new Analyser(store, limits, threads, log);
  const onDemand = new OnDemand(store, limits, threads, analyser);
  const webFolder = options.webFolder ?? builtPagesFolder();
  const context: Context = { store, analyser, onDemand, limits, webFolder, log };
  const hosts = options.allowedHosts ?? namesIn(process.env['RIMELOG_ALLOWED_HOSTS']);
  const connectionsCheckingInterval = Math.min(5000, limits.headersMs / 2);
  const server = createServer(
    { keepAlive: true, connectionsCheckingInterval },
    createApp(context, [...hosts, options.host]),
  );
  limitServer(server, limits);
  const close = async (): Promise<void> => {
    const closed = server.listening ? once(server, 'close') : null;
    server.close();
    server.closeAllConnections();
    await analyser.close();
    await closed;
    store.close();
  };
  try {
    await listen(server, options.host, options.port);
    await analyser.resume();
  } catch (error) {
    await close();
    throw error;
  }
  return { address: addressOf(server, options.host), close };
}
