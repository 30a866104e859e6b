import { type Command, Option } from 'commander';
import type { Console } from '../console.ts';
import { ExitCode } from '../exit-codes.ts';
import { type ReadingOptions, withReadingOptions } from '../options.ts';
import { overridesFrom, statedUnits } from '../override-options.ts';
import { progressLine } from '../progress-line.ts';
import { siteFileFor } from '../request.ts';
import { writeOutput } from '../write-output.ts';

interface NormalizeOptions extends ReadingOptions {
  readonly report?: string;
}

export function addNormalize(program: Command, io: Console, finish: (code: ExitCode) => void): void {
  withReadingOptions(program.command('normalize'))
    .summary('write what was understood as one tidy CSV')
    .description('Writes every reading that was understood as one tidy CSV: time,point,value,unit.')
    .addOption(new Option('--report <file>', 'write the account of the import to this file, as JSON'))
    .action(async (exports: string[], options: NormalizeOptions) =>
      finish(await normalize(exports, options, io)),
    );
}

async function normalize(
  exports: readonly string[],
  options: NormalizeOptions,
  io: Console,
): Promise<ExitCode> {
  const progress = progressLine(io);
  const siteFile = await siteFileFor(exports, options.site, io);
  const { gatherReadings } = await import('../../pipeline/gather-readings.ts');
  const { normalizedChunks } = await import('../../importing/normalize.ts');
  const { withUnderstoodUnits } = await import('../../importing/assembling/understood-units.ts');
  const gathered = await gatherReadings({
    exports,
    siteFile,
    timeZone: options.timeZone ?? null,
    overrides: overridesFrom(options),
    units: statedUnits(options),
    onProgress: progress.show,
  }).finally(progress.clear);
  const readings = withUnderstoodUnits(gathered.readings, gathered.site);
  if (options.report !== undefined) {
    const { importDocument } = await import('../../reporting/import-document.ts');
    const text = `${JSON.stringify(importDocument(readings.report), null, 2)}\n`;
    writeOutput(options.report, text, [...exports, options.site]);
  } else {
    const { importLines } = await import('../../reporting/import-lines.ts');
    const { visibleText } = await import('../../reporting/visible-text.ts');
    for (const { heading, details } of importLines(readings.report)) {
      io.err(`${visibleText(heading)}\n${details.map((detail) => `  - ${visibleText(detail)}\n`).join('')}`);
    }
  }
  for (const chunk of normalizedChunks(readings)) await io.out(chunk);
  return ExitCode.analysed;
}
