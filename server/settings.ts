const mebibyte = 1024 * 1024;

/** What the server takes and how long it waits. Each refusal names the limit that it met; docs/reference/http.md lists them. */
export interface ServerLimits {
  /** Bytes of one upload as a whole, its wrapping included. */
  readonly bodyBytes: number;
  /** Bytes of one file. */
  readonly fileBytes: number;
  /** Bytes of the site file. */
  readonly siteFileBytes: number;
  /** `export` files in one upload. */
  readonly files: number;
  /** Exports kept in the data folder. */
  readonly storedExports: number;
  /** Bytes kept in the data folder. */
  readonly storedBytes: number;
  /** Analyses that run at the same time, each in a thread of its own. */
  readonly analysesAtOnce: number;
  /** Analyses that may wait for a thread. */
  readonly analysesWaiting: number;
  readonly analysisMs: number;
  /** Heap of one analysis beyond the readings themselves, MiB. */
  readonly analysisHeapMebibytes: number;
  /** Progress streams open at the same time. */
  readonly progressStreams: number;
  /** Receiving a whole request, its headers, and silence on a connection. */
  readonly requestMs: number;
  readonly headersMs: number;
  readonly silenceMs: number;
}

export const defaultLimits: ServerLimits = {
  bodyBytes: 1024 * mebibyte,
  fileBytes: 512 * mebibyte,
  siteFileBytes: mebibyte,
  files: 200,
  storedExports: 500,
  storedBytes: 20 * 1024 * mebibyte,
  analysesAtOnce: 1,
  analysesWaiting: 4,
  analysisMs: 15 * 60_000,
  analysisHeapMebibytes: 2048,
  progressStreams: 100,
  requestMs: 10 * 60_000,
  headersMs: 20_000,
  silenceMs: 60_000,
};

export interface ServerOptions {
  /** null takes the usual one, or any free one when that is taken; 0 takes any free one. */
  readonly port: number | null;
  readonly host: string;
  /** Where uploads and results are kept; null for the user's own data folder. */
  readonly dataFolder: string | null;
  /** Host names, beside loopback names and addresses, under which the pages may be asked for. */
  readonly allowedHosts?: readonly string[];
  readonly limits?: Partial<ServerLimits>;
  /** The built pages; by default those of this package. */
  readonly webFolder?: string;
  /** Lines for whoever runs the server; standard error unless told. */
  readonly log?: (line: string) => void;
}
