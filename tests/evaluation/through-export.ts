import type { Dialect } from '../../sample-logs/maker/export/dialect.ts';
import { siteFileText } from '../../sample-logs/maker/export/site-file.ts';
import { writeExports } from '../../sample-logs/maker/export/write-exports.ts';
import type { SimulatedStore } from '../../sample-logs/maker/simulated-store.ts';
import { diagnose } from '../../src/diagnosis/diagnose.ts';
import { assembleLog } from '../../src/importing/assemble.ts';
import { readExports } from '../../src/importing/read-exports.ts';
import type { ExportSource } from '../../src/importing/readings.ts';
import { parseSiteFile } from '../../src/importing/site-file/site-file.ts';
import type { Diagnosis } from '../../src/model/finding.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';

/** Through everything: the export as text, the site file, reading, assembling, signals, diagnosis. */
export async function diagnoseExport(store: SimulatedStore, dialect: Dialect): Promise<Diagnosis> {
  const site = parseSiteFile(siteFileText(store, dialect), 'site.yaml');
  const sources = writeExports(store, dialect).map(({ name, text }): ExportSource => {
    const bytes = Buffer.from(text, 'utf8');
    return {
      name,
      size: bytes.length,
      async *open() {
        for (let at = 0; at < bytes.length; at += 1 << 20) yield bytes.subarray(at, at + (1 << 20));
      },
    };
  });
  const readings = await readExports(sources, { timeZone: store.timeZone, timeZoneSource: 'site' });
  return diagnose(computeSignals(assembleLog(readings, site, {}).log));
}
