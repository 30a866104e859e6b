import { mkdir, open, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { draftSite } from '../../src/importing/naming/draft-site.ts';
import type { Log } from '../../src/model/log.ts';
import type { AnalysedExports } from '../../src/pipeline/analyse-exports.ts';
import { circuitBackgrounds } from '../../src/reporting/background/circuit-background.ts';
import { findingsDocument } from '../../src/reporting/findings-document.ts';
import type { FindingsDocument } from '../../src/reporting/findings-schema.ts';
import { siteTitle } from '../../src/reporting/headline.ts';
import { htmlReport } from '../../src/reporting/html-report.ts';
import { visitPage } from '../../src/reporting/visit/visit-page.ts';
import { stopSummary, stopTitle } from '../../src/reporting/visit/visit-words.ts';
import { syncFolder } from '../../src/store/atomic-write.ts';
import type { FirstStop, ResultSummary } from '../../src/store/stored-export.ts';
import { storeLog } from '../../src/store/stored-log.ts';
import { type Stop, type VisitSheet, visitSheet } from '../../src/visit/visit-sheet.ts';
import { resultNames } from './result-names.ts';
import { siteReport } from './site-report.ts';

function summaryOf(
  document: FindingsDocument,
  { stops }: VisitSheet,
  { log, report, guess }: AnalysedExports,
): ResultSummary {
  const findings = { act: 0, watch: 0, note: 0 };
  for (const { severity } of document.findings) findings[severity]++;
  return {
    site: siteTitle(log, report),
    timeZone: document.timeZone,
    start: document.span.start,
    end: document.span.end,
    circuits: document.circuits.length,
    findings,
    guessedSite: guess !== null,
    firstStop: stops[0] === undefined ? null : firstStopOf(stops[0], log),
  };
}

function firstStopOf(stop: Stop, log: Log): FirstStop {
  const { severity, weight } = stop;
  return { place: stopTitle(stop, log), severity, summary: stopSummary(stop, log), weight };
}

async function syncFile(path: string): Promise<void> {
  const handle = await open(path, 'r+');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Writes everything that is kept of an analysis; the folder `result` appears whole or not at all. */
export async function storeResult(exportFolder: string, analysed: AnalysedExports): Promise<ResultSummary> {
  const temporary = join(exportFolder, 'result.tmp');
  const result = join(exportFolder, 'result');
  await rm(temporary, { recursive: true, force: true });
  await mkdir(temporary, { mode: 0o700 });
  const document = findingsDocument(analysed.log, analysed.report, analysed.diagnosis);
  const texts: [string, string][] = [
    [resultNames.findings, JSON.stringify(document)],
    [resultNames.report, JSON.stringify(siteReport(analysed))],
    [resultNames.log, JSON.stringify(await storeLog(temporary, analysed.log, analysed.signals))],
  ];
  texts.push([resultNames.background, JSON.stringify({ circuits: circuitBackgrounds(analysed) })]);
  texts.push([resultNames.page, htmlReport(analysed)]);
  const sheet = visitSheet(analysed.signals, analysed.diagnosis);
  texts.push([resultNames.visit, visitPage(sheet, analysed)]);
  if (analysed.guess !== null) texts.push([resultNames.siteFile, draftSite(analysed.guess)]);
  for (const [name, text] of texts) {
    await writeFile(join(temporary, name), text, { mode: 0o600 });
    await syncFile(join(temporary, name));
  }
  await syncFolder(temporary);
  await rm(result, { recursive: true, force: true });
  await rename(temporary, result);
  await syncFolder(exportFolder);
  return summaryOf(document, sheet, analysed);
}
