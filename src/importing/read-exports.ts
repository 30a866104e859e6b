import type { FileReport, ImportReport } from '../model/import-report.ts';
import type { ReadOverrides } from './reading/file-context.ts';
import { joinFiles } from './reading/join-files.ts';
import { type FileReadings, readFile } from './reading/read-file.ts';
import { type ExportSource, ImportRefusal, type ReadingColumn, type Readings } from './readings.ts';
import { knownZone } from './time/zone.ts';

export type { ReadOverrides } from './reading/file-context.ts';

export interface ReadOptions {
  /** IANA zone of time stamps without an offset. */
  readonly timeZone: string;
  readonly timeZoneSource: ImportReport['timeZoneSource'];
  readonly onProgress?: (bytesDone: number, bytesTotal: number | null) => void;
  readonly overrides?: ReadOverrides;
}

/**
 * Reads exports into readings, still in their own units and at their own times. Every row and value is either
 * imported or counted in the report with its reason. Throws ImportRefusal where nothing can be used.
 */
export async function readExports(sources: readonly ExportSource[], options: ReadOptions): Promise<Readings> {
  if (sources.length === 0) {
    throw new ImportRefusal(
      'no-files',
      'There is no export to read. Name a CSV file, a folder, a .gz or a .zip that holds one.',
    );
  }
  if (!knownZone(options.timeZone)) {
    throw new ImportRefusal(
      'zone-unknown',
      `The time zone “${options.timeZone}” is not known. Give one such as America/Denver or Europe/Berlin.`,
    );
  }
  const total = sources.every(({ size }) => size !== null)
    ? sources.reduce((sum, { size }) => sum + size!, 0)
    : null;
  let done = 0;
  const onBytes = (count: number): void => {
    done += count;
    options.onProgress?.(done, total);
  };
  const files: FileReport[] = [];
  const columns: ReadingColumn[] = [];
  const stems = uniqueStems(sources.map(({ name }) => name));
  let order = 0;
  let allOffsets = true;
  let firstRefusal: ImportRefusal | null = null;
  for (const [index, source] of sources.entries()) {
    let file: FileReadings;
    try {
      file = await readFile(source, options.timeZone, options.overrides ?? {}, onBytes);
    } catch (error) {
      if (!(error instanceof ImportRefusal) || sources.length === 1) throw error;
      firstRefusal ??= error;
      files.push(unusedFile(source.name, error));
      continue;
    }
    files.push(file.report);
    allOffsets &&= file.allOffsets;
    for (const part of file.parts) {
      columns.push({
        point: part.name,
        fileStem: stems[index]!,
        order: order++,
        unit: part.tally.unit,
        unitSource: part.tally.unitSource,
        times: part.times,
        values: part.values,
        status: part.status,
        logging: part.logging,
        ...(part.ended === undefined ? {} : { ended: part.ended }),
      });
    }
  }
  if (columns.length === 0 && firstRefusal !== null) throw firstRefusal;
  const timeZoneSource = allOffsets ? 'offsets-in-export' : options.timeZoneSource;
  const report = { timeZone: options.timeZone, timeZoneSource, files, issues: [] };
  const readings: Readings = { columns, report, timeZone: options.timeZone };
  return sources.length === 1 ? readings : joinFiles(readings, stems);
}

function unusedFile(name: string, refusal: ImportRefusal): FileReport {
  const issue = {
    code: 'file-without-readings',
    line: null,
    column: null,
    count: 1,
    message: `${refusal.message} [${refusal.code}]`,
  };
  return { name, rows: 0, rowsRejected: 0, values: 0, valuesRejected: 0, issues: [issue], choices: [] };
}

/** File names without folders and endings, told apart by the folder or a number where two are the same. */
function uniqueStems(names: readonly string[]): string[] {
  const stems = names.map((name) =>
    (name.split('/').at(-1) ?? name).replace(/(?:\.(?:csv|txt|tsv|log|dat|gz|zip))+$/iu, ''),
  );
  const used = new Set<string>();
  return stems.map((stem, index) => {
    let unique = stem;
    if (used.has(unique)) unique = names[index]!.replace(/(?:\.(?:csv|txt|tsv|log|dat|gz|zip))+$/iu, '');
    for (let number = 2; used.has(unique); number++) unique = `${stem}-${number}`;
    used.add(unique);
    return unique;
  });
}
