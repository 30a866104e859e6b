import { normalizedChunks } from '../../src/importing/normalize.ts';
import { type ReadOverrides, readExports } from '../../src/importing/read-exports.ts';
import type { ExportSource, Readings } from '../../src/importing/readings.ts';
import type { FileReport } from '../../src/model/import-report.ts';

export function bytesOf(content: string | Uint8Array): Uint8Array {
  return typeof content === 'string' ? new TextEncoder().encode(content) : content;
}

/** An export in memory, handed out in chunks of `chunkLength` bytes. */
export function memorySource(name: string, content: string | Uint8Array, chunkLength = 65_536): ExportSource {
  const bytes = bytesOf(content);
  return {
    name,
    size: bytes.length,
    async *open() {
      for (let at = 0; at < bytes.length; at += chunkLength) yield bytes.subarray(at, at + chunkLength);
    },
  };
}

export interface ReadingSetup {
  readonly zone?: string;
  readonly overrides?: ReadOverrides;
}

export async function readSources(
  sources: readonly ExportSource[],
  setup: ReadingSetup = {},
): Promise<Readings> {
  const { zone = 'America/Denver', overrides } = setup;
  return readExports(sources, {
    timeZone: zone,
    timeZoneSource: 'option',
    ...(overrides === undefined ? {} : { overrides }),
  });
}

export async function readContent(content: string | Uint8Array, setup: ReadingSetup = {}): Promise<Readings> {
  return readSources([memorySource('export.csv', content)], setup);
}

export function normalized(readings: Readings): string {
  return [...normalizedChunks(readings)].join('');
}

export async function normalizedContent(
  content: string | Uint8Array,
  setup: ReadingSetup = {},
): Promise<string> {
  return normalized(await readContent(content, setup));
}

export function onlyReport(readings: Readings): FileReport {
  return readings.report.files[0]!;
}

export function codesOf(readings: Readings): string[] {
  return [...new Set(readings.report.files.flatMap((file) => file.issues.map((issue) => issue.code)))].sort();
}
