import type { ReadOptions } from '../importing/read-exports.ts';
import { readExports } from '../importing/read-exports.ts';
import type { ExportSource, Readings } from '../importing/readings.ts';
import type { SiteFile } from '../importing/site-file/site-file.ts';
import { openExports } from '../opening/open-exports.ts';

/** A site file as text; `name` is only for messages. */
export interface SiteFileText {
  readonly name: string;
  readonly text: string;
}

/** Which exports to read, and what the caller knows about them. */
export interface ExportRequest {
  /** Files and folders to open, or sources that are already there. */
  readonly exports: readonly string[] | readonly ExportSource[];
  readonly siteFile?: SiteFileText | null;
  /** Zone of times without an offset, where the site file does not say; else the machine's. */
  readonly timeZone?: string | null;
  readonly overrides?: ReadOptions['overrides'];
  /** Units of the columns that say none; they go before those of the site file. */
  readonly units?: SiteFile['units'];
  readonly onProgress?: (progress: Progress) => void;
}

export type Stage = 'reading' | 'arranging' | 'looking for defrosts and cycles' | 'judging';

export interface Progress {
  readonly stage: Stage;
  /** 0 to 1 within the stage, where it can be told. */
  readonly share: number | null;
}

export interface Gathered {
  readonly readings: Readings;
  readonly site: SiteFile | null;
}

function zoneOf(
  site: SiteFile | null,
  asked: string | null,
): Pick<ReadOptions, 'timeZone' | 'timeZoneSource'> {
  if (site?.timeZone) return { timeZone: site.timeZone, timeZoneSource: 'site' };
  if (asked !== null) return { timeZone: asked, timeZoneSource: 'option' };
  return { timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone, timeZoneSource: 'machine' };
}

function isPaths(exports: ExportRequest['exports']): exports is readonly string[] {
  return typeof exports[0] === 'string';
}

/** Its parser and schema are half of the time in which the command starts: loaded only where there is a site file. */
async function readSiteFile({ text, name }: SiteFileText): Promise<SiteFile> {
  const { parseSiteFile } = await import('../importing/site-file/site-file.ts');
  return parseSiteFile(text, name);
}

/** Opens and reads exports. Throws ImportRefusal where the call or a file cannot be used. */
export async function gatherReadings(request: ExportRequest): Promise<Gathered> {
  const { exports, siteFile = null, timeZone = null, overrides, units, onProgress } = request;
  const described = siteFile === null ? null : await readSiteFile(siteFile);
  const site = units === undefined ? described : { ...described, units: { ...described?.units, ...units } };
  const sources = isPaths(exports) ? await openExports([...exports]) : exports;
  const readings = await readExports([...sources], {
    ...zoneOf(site, timeZone),
    ...(overrides === undefined ? {} : { overrides }),
    onProgress: (done, total) =>
      onProgress?.({ stage: 'reading', share: total === null || total === 0 ? null : done / total }),
  });
  return { readings, site };
}
