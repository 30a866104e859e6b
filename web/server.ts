import type {
  CircuitBackground,
  CircuitSeries,
  ExportEntry,
  FindingsDocument,
  ProblemText,
  SiteReport,
  Span,
} from './json.ts';

/** A refusal of the server, or no answer at all, in words for the user. */
export class Refusal extends Error {
  readonly code: string;
  readonly remedy: string;

  constructor({ code, message, remedy }: ProblemText) {
    super(message);
    this.code = code;
    this.remedy = remedy;
  }
}

export const unreachable: ProblemText = {
  code: 'unreachable',
  message: 'The rimelog server does not answer.',
  remedy: 'Look whether it still runs in its terminal, then try again.',
};

/** The refusal in a body, or a general one when the body holds none. */
export function refusalIn(body: unknown): Refusal {
  const error = (body as { error?: ProblemText } | null)?.error;
  return new Refusal(
    error?.message ? error : { ...unreachable, message: 'The server gave no usable answer.' },
  );
}

async function ask<T>(address: string, options: RequestInit = {}): Promise<T> {
  const response = await fetch(address, options).catch((error: Error) => {
    if (error.name === 'AbortError') throw error;
    throw new Refusal(unreachable);
  });
  if (response.status === 204) return undefined as T;
  const body: unknown = await response.json().catch(() => null);
  if (!response.ok) throw refusalIn(body);
  return body as T;
}

/** JSON at an address of this server. Rejects with a Refusal. */
export const readJson = <T>(address: string, signal: AbortSignal): Promise<T> => ask(address, { signal });

const base = '/api/v1/exports';
const addressOf = (id: string): string => `${base}/${encodeURIComponent(id)}`;

export const listExports = (): Promise<{ exports: readonly ExportEntry[] }> => ask(base);
export const readExport = (id: string): Promise<ExportEntry> => ask(addressOf(id));
export const deleteExport = (id: string): Promise<void> => ask(addressOf(id), { method: 'DELETE' });
export const eventsOf = (id: string): string => `${addressOf(id)}/events`;
export const findingsAddress = (id: string): string => `${addressOf(id)}/findings`;
export const reportPageAddress = (id: string): string => `${addressOf(id)}/report.html`;
export const siteFileAddress = (id: string): string => `${addressOf(id)}/site-file`;

export const visitAddress = (id: string): string => `${addressOf(id)}/visit.html`;
export const monthAddress = (id: string, month: string): string =>
  `${addressOf(id)}/months/${encodeURIComponent(month)}`;

export const repairAddress = (id: string, circuit: string, serviced: string): string =>
  `${addressOf(id)}/circuits/${encodeURIComponent(circuit)}/repair?${new URLSearchParams({ serviced })}`;
export const comparisonAddress = (id: string, against: string): string =>
  `${addressOf(id)}/comparisons/${encodeURIComponent(against)}`;

/** Null where an earlier rimelog analysed the export, which did not keep it. */
export async function readBackground(id: string, circuit: string): Promise<CircuitBackground | null> {
  try {
    return await ask(`${addressOf(id)}/circuits/${encodeURIComponent(circuit)}/background`);
  } catch (error) {
    if (error instanceof Refusal && error.code === 'made-earlier') return null;
    throw error;
  }
}

export const analyseAgain = (id: string, siteFile: string): Promise<{ id: string }> =>
  ask(`${addressOf(id)}/site`, {
    method: 'POST',
    body: siteFile,
    headers: { 'Content-Type': 'application/yaml' },
  });

export interface SiteResult {
  readonly document: FindingsDocument;
  readonly report: SiteReport;
}

const results = new Map<string, Promise<SiteResult>>();

/** Findings and report of an export; read once while the page is open, as they never change. */
export function readResult(id: string): Promise<SiteResult> {
  const known = results.get(id);
  if (known !== undefined) return known;
  const reading = Promise.all([
    ask<FindingsDocument>(findingsAddress(id)),
    ask<SiteReport>(`${addressOf(id)}/report`),
  ]).then(([document, report]) => ({ document, report }));
  reading.catch(() => results.delete(id));
  results.set(id, reading);
  return reading;
}

export function readSeries(
  id: string,
  of: 'circuit' | 'group',
  name: string,
  range: Span | null,
  pixels: number,
  signal: AbortSignal,
): Promise<CircuitSeries> {
  const query = new URLSearchParams({ pixels: String(pixels) });
  if (range !== null) {
    query.set('from', new Date(range.from).toISOString());
    query.set('to', new Date(range.to).toISOString());
  }
  return ask(`${addressOf(id)}/${of}s/${encodeURIComponent(name)}/series?${query}`, { signal });
}
